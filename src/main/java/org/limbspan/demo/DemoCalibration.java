package org.limbspan.demo;

import java.time.Instant;

/** One invented photograph of a sheet, 297 mm tall, at about 50 m. */
record DemoCalibration(Instant takenAt, double measuredPx) {}
