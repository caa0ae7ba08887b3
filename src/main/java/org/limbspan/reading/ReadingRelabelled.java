package org.limbspan.reading;

/** A reading was given another axis. */
public record ReadingRelabelled(long rigId, String slug) {}
