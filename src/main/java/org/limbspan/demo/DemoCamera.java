package org.limbspan.demo;

import java.time.Instant;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.DoubleStream;

/** An invented camera: its plate scale, the nudge of its zoom, and its noise. */
final class DemoCamera {

  /** Half past four on a December afternoon, 30 weeks after the first night. */
  static final Instant NUDGED_AT = Instant.parse("2025-12-06T15:30:00Z");

  /** Discs are larger by so much from then on. */
  static final double NUDGE_PERCENT = 0.6;

  private static final double SCALE_ARCSEC_PER_PX = 1.137;
  private static final double FRAME_NOISE = 0.0014;
  private static final double NIGHT_NOISE = 0.0004;
  private static final double OUTLIER_SHARE = 0.02;

  private final RandomGenerator random;
  private final Instant nudgedAt;
  private final double nudgePercent;
  private double nightError;

  DemoCamera(RandomGenerator random) {
    this(random, NUDGED_AT, NUDGE_PERCENT);
  }

  /** Another one, nudged at another time. */
  DemoCamera(RandomGenerator random, Instant nudgedAt, double nudgePercent) {
    this.random = random;
    this.nudgedAt = nudgedAt;
    this.nudgePercent = nudgePercent;
  }

  void newNight() {
    nightError = NIGHT_NOISE * random.nextGaussian();
  }

  List<Double> bracket(Instant takenAt, double diameterArcmin) {
    double px = diameterArcmin * 60 / scaleAt(takenAt);
    double astray = random.nextDouble() < OUTLIER_SHARE ? outlier() : 0;
    return DoubleStream.generate(() -> FRAME_NOISE * random.nextGaussian())
        .limit(3)
        .map(noise -> Math.round(px * (1 + nightError + astray + noise) * 10) / 10.0)
        .boxed()
        .toList();
  }

  double sheetPx(Instant takenAt) {
    return sheetPx(takenAt, 50);
  }

  /** The sheet at about that distance. */
  double sheetPx(Instant takenAt, double aboutM) {
    double distanceM = aboutM + 0.02 * random.nextGaussian();
    double arcsec = Math.toDegrees(2 * Math.atan(0.297 / (2 * distanceM))) * 3600;
    double px = arcsec / scaleAt(takenAt) + random.nextGaussian();
    return Math.round(px * 10) / 10.0;
  }

  private double outlier() {
    double size = FRAME_NOISE / Math.sqrt(3) * (3 + 4 * random.nextDouble());
    return random.nextBoolean() ? size : -size;
  }

  private double scaleAt(Instant at) {
    return at.isBefore(nudgedAt)
        ? SCALE_ARCSEC_PER_PX
        : SCALE_ARCSEC_PER_PX / (1 + nudgePercent / 100);
  }
}
