package org.limbspan.reading;

import java.time.Instant;

/** A reading to be written as the version of that number. */
record NumberedReading(NewReading reading, int version) {

  /** As it will stand, but for the id that the database gives. */
  Version asVersion(Instant enteredAt) {
    return new Version(
        new RecordedReading(
            0,
            reading.takenAt(),
            reading.axis(),
            version,
            reading.diameter(),
            reading.frames(),
            reading.circumstances(),
            enteredAt),
        Version.Standing.HELD);
  }
}
