package org.limbspan.drift;

import org.limbspan.cycle.Observation;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;

/**
 * Takes the Moon for a body at a fixed height above a flat ground: the ground mapped azimuthal and
 * equidistant about the north pole, the Moon above its sublunar point at 3000 statute miles (common
 * practice, no source). Its true diameter is free, so that only ratios of size count.
 */
final class NearMoonLens implements Lens {

  private static final double HEIGHT_KM = 3000 * 1.609344;
  private static final double KM_PER_DEGREE = 6371.0 * Math.PI / 180;
  private static final double USUAL_SIZE_ARCMIN = 31;

  private final Site site;

  NearMoonLens(Site site) {
    this.site = site;
  }

  @Override
  public double offset(Fact fact) {
    if (fact.observation.isEmpty()) {
      return 0;
    }
    Observation reading = fact.observation.get();
    double arcmin = USUAL_SIZE_ARCMIN * HEIGHT_KM / distanceKm(reading.sight());
    return Math.log(arcmin / reading.predictedArcmin());
  }

  private double distanceKm(MoonSight sight) {
    double here = KM_PER_DEGREE * (90 - site.latitudeDeg());
    double there = KM_PER_DEGREE * (90 - sight.sublunarLatitudeDeg());
    double angle = Math.toRadians(sight.sublunarLongitudeDeg() - site.longitudeDeg());
    double square = here * here + there * there - 2 * here * there * Math.cos(angle);
    return Math.sqrt(square + HEIGHT_KM * HEIGHT_KM);
  }
}
