package org.limbspan.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;

/**
 * The Moon's distance from two sites that measured it at the same time: whoever has it higher is
 * nearer to it, by {@link ParallaxLaw}, and sees it larger.
 *
 * <p>Observed is ln(size here / size there) of each pair, refraction taken off. The two plate
 * scales have one free ratio for each pair of setups, so that nothing hangs on a calibration; the
 * distance is read from how that ratio changes as the Moon stands higher now here, now there. One
 * parameter for all pairs: the parallax at the mean distance. Robust generalised least squares;
 * readings of one pass have a part in common.
 *
 * <p>Taken from tables: the Moon's altitude at both sites (or one's own sighted ones), its change
 * of distance between the two instants of a pair and the shape (not the scale) of that over the
 * month.
 */
public final class TwoSiteEstimator {

  private static final double FIRST_PARALLAX = 1 / 60.0;
  private static final int ROUNDS = 4;
  private static final int LEAST_PAIRS = 3;

  private final List<Observation> ours = new ArrayList<>();
  private final List<Observation> theirs = new ArrayList<>();

  private TwoSiteEstimator() {}

  /**
   * The distance.
   *
   * @param within how far apart in time a pair may be, 0 or more; each reading goes into one pair
   *     at most, with the nearest in time
   * @return empty for fewer than three pairs, or where they tell nothing
   */
  public static Optional<TwoSiteDistance> estimate(
      List<Observation> here,
      Site site,
      List<Observation> there,
      Site otherSite,
      AltitudeSource altitudes,
      Duration within) {
    TwoSiteEstimator estimator = new TwoSiteEstimator();
    estimator.pair(known(here, altitudes), known(there, altitudes), within);
    return estimator.ours.size() < LEAST_PAIRS
        ? Optional.empty()
        : estimator.fit(site, otherSite, altitudes);
  }

  private static List<Observation> known(List<Observation> all, AltitudeSource altitudes) {
    return all.stream().filter(altitudes::isKnown).toList();
  }

  private void pair(List<Observation> here, List<Observation> there, Duration within) {
    NavigableMap<Instant, Observation> free = new TreeMap<>();
    there.forEach(o -> free.putIfAbsent(o.takenAt(), o));
    for (Observation o : Series.sorted(here)) {
      Stream.of(free.floorEntry(o.takenAt()), free.ceilingEntry(o.takenAt()))
          .filter(entry -> entry != null && apart(o, entry.getKey()).compareTo(within) <= 0)
          .min((one, two) -> apart(o, one.getKey()).compareTo(apart(o, two.getKey())))
          .ifPresent(
              entry -> {
                ours.add(o);
                theirs.add(entry.getValue());
                free.remove(entry.getKey());
              });
    }
  }

  private static Duration apart(Observation o, Instant at) {
    return Duration.between(o.takenAt(), at).abs();
  }

  private Optional<TwoSiteDistance> fit(Site site, Site otherSite, AltitudeSource altitudes) {
    ParallaxLaw here = ParallaxLaw.of(ours, site, altitudes);
    ParallaxLaw there = ParallaxLaw.of(theirs, otherSite, altitudes);
    int size = ours.size();
    double mean = ours.stream().mapToDouble(TwoSiteEstimator::lnDistance).average().orElse(0);
    double[] growth = new double[size];
    double[] y = new double[size];
    double[] stated = new double[size];
    for (int i = 0; i < size; i++) {
      growth[i] = Math.exp(mean - lnDistance(ours.get(i)));
      double moved = lnDistance(ours.get(i)) - lnDistance(theirs.get(i));
      y[i] = lnUnrefracted(ours.get(i)) - lnUnrefracted(theirs.get(i)) + moved;
      stated[i] =
          Math.hypot(ours.get(i).relativeUncertainty(), theirs.get(i).relativeUncertainty());
    }
    Grouping passes = Grouping.by(ours.stream().map(o -> PassNumber.of(o.sight(), site)).toList());
    List<SetupPair> setups = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      setups.add(
          new SetupPair(
              ours.get(i).setup(),
              ours.get(i).axis(),
              theirs.get(i).setup(),
              theirs.get(i).axis()));
    }
    double parallax = FIRST_PARALLAX;
    Optional<RobustRegression.Fit> fit = Optional.empty();
    for (int round = 0; round < ROUNDS; round++) {
      double[] apparent = new double[size];
      double[] column = new double[size];
      for (int i = 0; i < size; i++) {
        double q = parallax * growth[i];
        column[i] = growth[i] * (here.slope(i, q) - there.slope(i, q));
        apparent[i] = y[i] - here.lnGain(i, q) + there.lnGain(i, q) + parallax * column[i];
      }
      Rows rows = Rows.of(apparent, new double[][] {column}, stated, passes, Grouping.by(setups));
      fit = RobustRegression.fit(rows, NightPart.RANDOM, new double[] {parallax});
      if (fit.isEmpty()) {
        return Optional.empty();
      }
      parallax = Math.max(-0.5, Math.min(0.5, fit.get().coefficients().getEntry(0)));
    }
    double leverage = leverage(here, there);
    return fit.map(f -> new TwoSiteDistance(MoonDistance.of(f.coefficient(0)), size, leverage));
  }

  private double leverage(ParallaxLaw here, ParallaxLaw there) {
    double[] slopes = new double[ours.size()];
    for (int i = 0; i < slopes.length; i++) {
      slopes[i] = here.slope(i, 0) - there.slope(i, 0);
    }
    return Arrays.stream(slopes).max().orElse(0) - Arrays.stream(slopes).min().orElse(0);
  }

  private static double lnUnrefracted(Observation o) {
    return Math.log(
        o.observedArcmin() * o.sight().horizontalDiameterArcmin() / o.predictedArcmin());
  }

  private static double lnDistance(Observation o) {
    return Math.log(o.sight().geocentricDistanceKm());
  }

  private record SetupPair(int ours, Axis axis, int theirs, Axis otherAxis) {}
}
