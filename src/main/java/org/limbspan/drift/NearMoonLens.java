package org.limbspan.drift;

import org.limbspan.cycle.NearMoon;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Site;

/**
 * Takes the Moon for the one of the near-Moon hypothesis, see {@link NearMoon}. Its true diameter
 * is free, so that only ratios of size count.
 */
record NearMoonLens(Site site) implements Lens {

  /** Size at the zenith; any value does, since the level is free. */
  private static final double ZENITH_ARCMIN = 31;

  @Override
  public double offset(Fact fact) {
    if (fact.observation.isEmpty()) {
      return 0;
    }
    Observation reading = fact.observation.get();
    double distanceKm = NearMoon.distanceKm(reading.sight(), site, NearMoon.HEIGHT_KM);
    return Math.log(ZENITH_ARCMIN * NearMoon.HEIGHT_KM / distanceKm / reading.predictedArcmin());
  }
}
