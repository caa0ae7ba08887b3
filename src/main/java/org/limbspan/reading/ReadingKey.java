package org.limbspan.reading;

import java.time.Instant;
import org.limbspan.sky.Axis;

/** What makes two entries one reading: the instant and the axis. */
record ReadingKey(Instant takenAt, Axis axis) {}
