package org.limbspan.drift;

import org.limbspan.cycle.NearMoon;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;

/**
 * Takes the Moon for the one of the near-Moon hypothesis, see {@link NearMoon}. Its true diameter
 * is free, so that only ratios of size count; refraction flattens it as it does the other.
 */
record NearMoonLens(Site site) implements Lens {

  /** Size at the zenith; any value does, since the level is free. */
  private static final double ZENITH_ARCMIN = 31;

  @Override
  public double offset(Fact fact) {
    if (fact.observation.isEmpty()) {
      return 0;
    }
    MoonSight sight = fact.observation.get().sight();
    double distanceKm = NearMoon.distanceKm(sight, site, NearMoon.HEIGHT_KM);
    double arcmin = ZENITH_ARCMIN * NearMoon.HEIGHT_KM / distanceKm;
    return Math.log(arcmin / sight.horizontalDiameterArcmin());
  }
}
