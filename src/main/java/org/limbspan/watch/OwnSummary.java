package org.limbspan.watch;

import java.util.Optional;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.Estimate;
import org.limbspan.cycle.MoonDistance;
import org.limbspan.cycle.NightDistanceEstimator;
import org.limbspan.cycle.NightRatios;
import org.limbspan.cycle.NightsNeeded;
import org.limbspan.cycle.RunningSelfReliantEstimator;
import org.limbspan.cycle.SelfReliantCycle;
import org.limbspan.cycle.Series;
import org.limbspan.sky.Site;

/** Puts what the readings say by themselves into the shape of the answer. */
final class OwnSummary {

  private final Series series;
  private final Site site;
  private final RunningSelfReliantEstimator sightedEstimator;

  /**
   * @param sightedEstimator for the altitudes that were sighted
   */
  OwnSummary(Series series, Site site, RunningSelfReliantEstimator sightedEstimator) {
    this.series = series;
    this.site = site;
    this.sightedEstimator = sightedEstimator;
  }

  /**
   * @param cycle that of the computed altitudes
   * @param distance that of the night pairs, with the computed altitudes
   */
  OwnResult result(
      Optional<SelfReliantCycle> cycle, NightRatios ratios, Optional<MoonDistance> distance) {
    if (series.size() == 0) {
      return OwnResult.NONE;
    }
    double factor =
        ratios.statedFactor().or(() -> cycle.map(c -> c.noise().statedFactor())).orElse(1.0);
    double ofOneNight = NightsNeeded.ofOneNight(ratios.pairs());
    Series sighted = series.where(o -> o.sighted().altitudeDeg().isPresent());
    return new OwnResult(
        series.spanDays(),
        series.typicalStated() * factor,
        Double.isFinite(ofOneNight) ? ofOneNight : null,
        cycle.map(c -> own(c, distance)).orElse(null),
        sightedEstimator
            .estimate(sighted, site, AltitudeSource.SIGHTED)
            .map(c -> own(c, sightedDistance(sighted, c)))
            .orElse(null),
        sighted.size());
  }

  private Optional<MoonDistance> sightedDistance(Series sighted, SelfReliantCycle cycle) {
    return NightDistanceEstimator.estimate(sighted, site, AltitudeSource.SIGHTED, cycle.curve());
  }

  private static OwnResult.Own own(SelfReliantCycle cycle, Optional<MoonDistance> distance) {
    return new OwnResult.Own(
        cycle.readingCount(),
        cycle.monthCount(),
        quantity(cycle.periodDays()),
        quantity(cycle.eccentricity()),
        quantity(cycle.swingPercent()),
        quantity(cycle.apsidalEccentricity()),
        distance.flatMap(MoonDistance::earthRadii).map(OwnSummary::quantity).orElse(null));
  }

  private static CycleResult.Quantity quantity(Estimate estimate) {
    return new CycleResult.Quantity(estimate.value(), estimate.uncertainty());
  }
}
