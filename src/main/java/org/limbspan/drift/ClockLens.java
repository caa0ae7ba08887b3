package org.limbspan.drift;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Sky;

/** Takes readings as made at other instants, or at another site, than logged. */
final class ClockLens implements Lens {

  private final Sky sky;
  final Correction correction;
  private final Map<Instant, MoonSight> sights = new HashMap<>();

  ClockLens(Sky sky, Correction correction) {
    this.sky = sky;
    this.correction = correction;
  }

  /** Whether this makes any difference to a reading. */
  boolean differs(Observation reading) {
    MoonSight sight = sight(reading);
    return sight.azimuthDeg() != reading.sight().azimuthDeg();
  }

  MoonSight sight(Observation reading) {
    return sights.computeIfAbsent(reading.takenAt(), at -> compute(reading));
  }

  private MoonSight compute(Observation reading) {
    Instant at = correction.trueInstant().apply(reading.takenAt());
    if (at.isBefore(sky.ephemerisFrom()) || !at.isBefore(sky.ephemerisTo())) {
      return reading.sight();
    }
    return sky.moonAt(at, correction.site());
  }

  @Override
  public double offset(Fact fact) {
    if (fact.observation.isEmpty()) {
      return 0;
    }
    Observation reading = fact.observation.get();
    return Math.log(sight(reading).diameterArcmin(reading.axis()) / reading.predictedArcmin());
  }

  @Override
  public double logOdds(Fact fact) {
    if (fact.observation.isEmpty()) {
      return 0;
    }
    Observation reading = fact.observation.get();
    return Sighting.logLikelihood(reading, sight(reading))
        - Sighting.logLikelihood(reading, reading.sight());
  }

  /** Two that correct alike are the same, whatever they remember. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof ClockLens lens
        && correction.name().equals(lens.correction.name())
        && correction.site().equals(lens.correction.site());
  }

  @Override
  public int hashCode() {
    return correction.name().hashCode();
  }
}
