package org.limbspan.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hipparchus.stat.descriptive.rank.Median;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.Estimate;
import org.limbspan.cycle.MoonDistance;
import org.limbspan.cycle.NightDistanceEstimator;
import org.limbspan.cycle.NightRatioEstimator;
import org.limbspan.cycle.NightRatios;
import org.limbspan.cycle.NightsNeeded;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.SelfReliantCycle;
import org.limbspan.cycle.SelfReliantEstimator;
import org.limbspan.sky.Site;

/** Puts what the readings say by themselves into the shape of the answer. */
final class OwnSummary {

  private static final double SECONDS_PER_DAY = 86_400;

  private final List<Observation> observations;
  private final Site site;

  private OwnSummary(List<Observation> observations, Site site) {
    this.observations = observations;
    this.site = site;
  }

  /**
   * @param cycle that of the computed altitudes, which is at hand
   */
  static OwnResult of(List<Observation> observations, Site site, Optional<SelfReliantCycle> cycle) {
    return observations.isEmpty()
        ? OwnResult.NONE
        : new OwnSummary(observations, site).result(cycle);
  }

  private OwnResult result(Optional<SelfReliantCycle> cycle) {
    NightRatios ratios = NightRatioEstimator.estimate(observations, site);
    double stated =
        new Median()
            .evaluate(
                observations.stream().mapToDouble(Observation::relativeUncertainty).toArray());
    double factor =
        ratios.statedFactor().or(() -> cycle.map(c -> c.noise().statedFactor())).orElse(1.0);
    double ofOneNight = NightsNeeded.ofOneNight(ratios.pairs());
    List<Observation> sighted =
        observations.stream().filter(o -> o.sighted().altitudeDeg().isPresent()).toList();
    return new OwnResult(
        spanDays(),
        stated * factor,
        Double.isFinite(ofOneNight) ? ofOneNight : null,
        cycle.map(c -> own(c, observations, AltitudeSource.COMPUTED)).orElse(null),
        SelfReliantEstimator.estimate(sighted, site, AltitudeSource.SIGHTED)
            .map(c -> own(c, sighted, AltitudeSource.SIGHTED))
            .orElse(null),
        sighted.size());
  }

  private double spanDays() {
    Instant first =
        observations.stream().map(Observation::takenAt).min(Instant::compareTo).orElseThrow();
    Instant last =
        observations.stream().map(Observation::takenAt).max(Instant::compareTo).orElseThrow();
    return Duration.between(first, last).toSeconds() / SECONDS_PER_DAY;
  }

  private OwnResult.Own own(
      SelfReliantCycle cycle, List<Observation> used, AltitudeSource altitudes) {
    CycleResult.@Nullable Quantity distance =
        NightDistanceEstimator.estimate(used, site, altitudes, cycle.curve())
            .flatMap(MoonDistance::earthRadii)
            .map(OwnSummary::quantity)
            .orElse(null);
    return new OwnResult.Own(
        cycle.readingCount(),
        cycle.monthCount(),
        quantity(cycle.periodDays()),
        quantity(cycle.eccentricity()),
        quantity(cycle.swingPercent()),
        quantity(cycle.apsidalEccentricity()),
        distance);
  }

  private static CycleResult.Quantity quantity(Estimate estimate) {
    return new CycleResult.Quantity(estimate.value(), estimate.uncertainty());
  }
}
