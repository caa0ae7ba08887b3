package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Refraction;

/**
 * A reading or a calibration as the judgement takes it, in the order of time. All values are
 * natural logarithms.
 */
final class Fact {

  private static final double MEAN_DISTANCE_KM = 384400;
  private static final Instant J2000 = Instant.parse("2000-01-01T12:00:00Z");

  final Instant at;

  /** Days since 2000-01-01T12:00Z. */
  final double day;

  /** Days since the fact before it in the same setup; 0 for the first. */
  final double gapDays;

  /** Of a reading its residual; of a calibration minus ln(scale), which a step moves alike. */
  final double value;

  /** Stated standard uncertainty of {@link #value}. */
  final double stated;

  /** Whether this is the first reading of a night; false for a calibration. */
  final boolean opensNight;

  /** The reading; empty for a calibration. */
  final Optional<Observation> observation;

  /** Standard uncertainty that this calibration shares with the others; 0 for a reading. */
  final double common;

  /** Variance of the flattening along the reading's axis from night to night. */
  final double air;

  /** ln(vertical / horizontal diameter) as computed; 0 for a calibration. */
  final double flattening;

  /** Geocentric part of the predicted size: -ln(geocentric / mean distance). */
  final double swing;

  /** Topocentric part of the predicted size: -ln(topocentric / geocentric distance). */
  final double parallax;

  private Fact(
      Instant at,
      double gapDays,
      double value,
      double stated,
      boolean opensNight,
      Optional<Observation> observation,
      double common) {
    this.at = at;
    this.day = daysOf(at);
    this.gapDays = gapDays;
    this.value = value;
    this.stated = stated;
    this.opensNight = opensNight;
    this.observation = observation;
    this.common = common;
    if (observation.isPresent()) {
      MoonSight sight = observation.get().sight();
      flattening = Math.log(sight.verticalDiameterArcmin() / sight.horizontalDiameterArcmin());
      double along =
          Math.log(observation.get().predictedArcmin() / sight.horizontalDiameterArcmin());
      air = Math.pow(along * airOf(sight), 2);
      swing = -Math.log(sight.geocentricDistanceKm() / MEAN_DISTANCE_KM);
      parallax = -Math.log(sight.topocentricDistanceKm() / sight.geocentricDistanceKm());
    } else {
      air = 0;
      flattening = 0;
      swing = 0;
      parallax = 0;
    }
  }

  /** Relative standard deviation of the flattening about that of the mean air. */
  private static double airOf(MoonSight sight) {
    double altitudeDeg = Math.max(Refraction.FLATTENING_LEAST_DEG, sight.apparentAltitudeDeg());
    return Refraction.flatteningDoubt(altitudeDeg);
  }

  static Fact reading(Observation observation, double gapDays, boolean opensNight) {
    return new Fact(
        observation.takenAt(),
        gapDays,
        observation.residual(),
        observation.relativeUncertainty(),
        opensNight,
        Optional.of(observation),
        0);
  }

  static Fact calibration(CalibrationPoint point, double gapDays) {
    return new Fact(
        point.takenAt(),
        gapDays,
        -point.logScale(),
        point.independentUncertainty(),
        false,
        Optional.empty(),
        point.commonUncertainty());
  }

  /** Whether the judgement would take this fact as it takes another. */
  boolean isSameAs(Fact other) {
    return this == other || isLike(other);
  }

  private boolean isLike(Fact other) {
    return at.equals(other.at)
        && gapDays == other.gapDays
        && value == other.value
        && stated == other.stated
        && opensNight == other.opensNight
        && common == other.common
        && observation.equals(other.observation);
  }

  boolean isReading() {
    return observation.isPresent();
  }

  static double daysOf(Instant at) {
    return Duration.between(J2000, at).toMillis() / 86400e3;
  }
}
