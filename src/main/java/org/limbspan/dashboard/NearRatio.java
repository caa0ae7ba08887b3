package org.limbspan.dashboard;

import java.time.Instant;
import org.limbspan.cycle.NearMoon;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.watch.NightsResult.Night;

/** High over low size of a night pair under the near-Moon hypothesis, refraction as it is. */
final class NearRatio {

  private final Sky sky;
  private final Site site;

  NearRatio(Sky sky, Site site) {
    this.sky = sky;
    this.site = site;
  }

  double of(Night night) {
    Axis axis = Axis.ofLabel(night.axis());
    return size(night.highAt(), axis) / size(night.lowAt(), axis);
  }

  private double size(Instant at, Axis axis) {
    MoonSight sight = sky.moonAt(at, site);
    double flattening = sight.diameterArcmin(axis) / sight.horizontalDiameterArcmin();
    return flattening / NearMoon.distanceKm(sight, site, NearMoon.HEIGHT_KM);
  }
}
