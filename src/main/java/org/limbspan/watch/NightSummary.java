package org.limbspan.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Estimate;
import org.limbspan.cycle.MoonDistance;
import org.limbspan.cycle.NightPair;
import org.limbspan.cycle.NightRatios;
import org.limbspan.sky.Site;

/** Puts the night pairs into the shape of the answer. */
final class NightSummary {

  private static final Duration AROUND_TRANSIT = Duration.ofHours(6);

  private final Culminations culminations;
  private final KnownNights known;
  private final Site site;

  /**
   * @param known those of this rig
   */
  NightSummary(Culminations culminations, KnownNights known, Site site) {
    this.culminations = culminations;
    this.known = known;
    this.site = site;
  }

  /**
   * @param distance from the night pairs alone; the month is taken from the readings as well
   */
  NightsResult nights(NightRatios ratios, Optional<MoonDistance> distance) {
    List<NightsResult.Night> nights = known.of(ratios.pairs(), this::put);
    return new NightsResult(
        nights, summary(ratios, nights, distance.flatMap(MoonDistance::earthRadii)));
  }

  private List<NightsResult.Night> put(List<NightPair> pairs) {
    NavigableSet<Instant> around = around(pairs);
    return pairs.stream().map(pair -> night(pair, around)).toList();
  }

  private static NightsResult.Night night(NightPair pair, NavigableSet<Instant> culminations) {
    return new NightsResult.Night(
        nearest(culminations, pair.transitAt()),
        pair.lowAt(),
        pair.highAt(),
        pair.lowAltitudeDeg(),
        pair.highAltitudeDeg(),
        pair.axis().label(),
        pair.readingCount(),
        pair.observedRatio(),
        pair.uncertainty(),
        pair.predictedRatio(),
        pair.verdict().label());
  }

  private NavigableSet<Instant> around(List<NightPair> pairs) {
    if (pairs.isEmpty()) {
      return Collections.emptyNavigableSet();
    }
    Instant from = pairs.get(0).transitAt().minus(AROUND_TRANSIT);
    Instant to = pairs.get(pairs.size() - 1).transitAt().plus(AROUND_TRANSIT);
    return culminations.around(from, to, site);
  }

  private static Instant nearest(NavigableSet<Instant> culminations, Instant transitAt) {
    return Stream.of(culminations.floor(transitAt), culminations.ceiling(transitAt))
        .filter(Objects::nonNull)
        .min(Comparator.comparing(at -> Duration.between(at, transitAt).abs()))
        .orElse(transitAt);
  }

  private static NightsResult.Summary summary(
      NightRatios ratios, List<NightsResult.Night> nights, Optional<Estimate> distanceEarthRadii) {
    @Nullable Estimate slope = ratios.slope().orElse(null);
    Optional<MeanRatio> observed = MeanRatio.observed(nights);
    return new NightsResult.Summary(
        nights.size(),
        slope == null ? null : slope.value(),
        slope == null ? null : slope.uncertainty(),
        observed.map(MeanRatio::ratio).orElse(null),
        MeanRatio.predicted(nights).map(MeanRatio::ratio).orElse(null),
        observed.map(MeanRatio::uncertainty).orElse(null),
        distanceEarthRadii.map(Estimate::value).orElse(null),
        distanceEarthRadii.map(Estimate::uncertainty).orElse(null),
        ratios.verdict().label());
  }
}
