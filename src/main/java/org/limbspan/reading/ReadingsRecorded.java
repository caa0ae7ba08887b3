package org.limbspan.reading;

/** Readings were entered. */
public record ReadingsRecorded(long rigId, String slug) {}
