package org.limbspan.demo;

import java.time.Instant;
import java.util.List;

/**
 * One invented reading as an observer would have logged it.
 *
 * @param framesPx horizontal diameter in three bracketed frames
 * @param altitudeDeg altitude as sighted with a protractor
 * @param azimuthDeg azimuth as read off a bearing card
 */
record DemoReading(
    Instant takenAt,
    List<Double> framesPx,
    double altitudeDeg,
    double azimuthDeg,
    double exposureS,
    String sky) {

  DemoReading {
    framesPx = List.copyOf(framesPx);
  }
}
