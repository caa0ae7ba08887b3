package org.limbspan.reading;

/** A reading was taken back. */
public record ReadingWithdrawn(long rigId, String slug) {}
