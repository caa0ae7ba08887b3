package org.limbspan.reading;

/** A reading to be written as the version of that number. */
record NumberedReading(NewReading reading, int version) {}
