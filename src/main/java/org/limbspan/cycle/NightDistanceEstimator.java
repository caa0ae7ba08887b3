package org.limbspan.cycle;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.limbspan.sky.Site;

/**
 * The Moon's distance in Earth radii from night pairs alone: each night, setup and axis has a level
 * of its own, so that scale and month cancel and only the growth of the disc with altitude is left,
 * compared with {@link ParallaxLaw}.
 *
 * <p>One parameter for all nights: the parallax at the mean distance. Used are altitudes (computed,
 * or sighted by the observer) and the change of distance within a night ({@link MonthPart}); no
 * distance.
 */
public final class NightDistanceEstimator {

  private static final double FIRST_PARALLAX = 1 / 60.0;
  private static final int ROUNDS = 6;

  /** Share of the uncertainty below which a change of the parallax does not matter. */
  private static final double SETTLED = 0.01;

  private NightDistanceEstimator() {}

  /** Empty where no night has two readings, or the readings draw no monthly curve. */
  public static Optional<MoonDistance> estimate(
      List<Observation> observations, Site site, AltitudeSource altitudes, MonthPart month) {
    return switch (month) {
      case READINGS ->
          SelfReliantEstimator.estimate(observations, site, altitudes)
              .flatMap(cycle -> estimate(observations, site, altitudes, cycle.curve()));
      case COMPUTED -> {
        Series series = Series.of(observations, site).where(altitudes::isKnown);
        double[] lnSize =
            series.observations().stream()
                .mapToDouble(o -> -Math.log(o.sight().geocentricDistanceKm()))
                .toArray();
        double mean = Arrays.stream(lnSize).average().orElse(0);
        yield fit(series, site, altitudes, Arrays.stream(lnSize).map(ln -> ln - mean).toArray());
      }
    };
  }

  /** The same with a monthly curve that is at hand already. */
  public static Optional<MoonDistance> estimate(
      List<Observation> observations, Site site, AltitudeSource altitudes, SizeCurve curve) {
    return estimate(Series.of(observations, site), site, altitudes, curve);
  }

  /** The same over a series. */
  public static Optional<MoonDistance> estimate(
      Series all, Site site, AltitudeSource altitudes, SizeCurve curve) {
    Series series = all.where(altitudes::isKnown);
    Series past = series.past();
    SizeCurve settled = curve.settled();
    Optional<Known> known =
        series
            .memory()
            .of(altitudes)
            .distance
            .of(
                new CycleMemory.Key(past.observations(), site, settled),
                () -> known(past, site, altitudes, lnSize(past, settled)));
    if (!series.hasRest()) {
      return known.map(k -> MoonDistance.of(k.regression().fit().coefficient(0)));
    }
    Series rest = series.rest();
    ParallaxLaw law = ParallaxLaw.of(rest.observations(), site, altitudes);
    return known
        .flatMap(
            k ->
                k.regression()
                    .with(
                        rows(rest, law, lnSize(rest, settled), rest.lnUnrefracted(), k.parallax())))
        .map(grown -> MoonDistance.of(grown.fit().coefficient(0)));
  }

  private static double[] lnSize(Series series, SizeCurve curve) {
    return curve.values(
        series.observations().stream().mapToDouble(o -> curve.days(o.takenAt())).toArray());
  }

  /**
   * What the settled past says.
   *
   * @param parallax at which the law was made linear
   */
  record Known(KnownRegression regression, double parallax) {}

  private static Optional<MoonDistance> fit(
      Series series, Site site, AltitudeSource altitudes, double[] lnSize) {
    return known(series, site, altitudes, lnSize)
        .map(k -> MoonDistance.of(k.regression().fit().coefficient(0)));
  }

  private static Optional<Known> known(
      Series series, Site site, AltitudeSource altitudes, double[] lnSize) {
    ParallaxLaw law = ParallaxLaw.of(series.observations(), site, altitudes);
    double[] y = series.lnUnrefracted();
    double parallax = FIRST_PARALLAX;
    Optional<RobustRegression.Fit> fit = Optional.empty();
    for (int round = 1; ; round++) {
      Rows rows = rows(series, law, lnSize, y, parallax);
      double[] start = {parallax};
      fit =
          fit.map(f -> RobustRegression.fitNear(rows, NightPart.ABSORBED, start, f.noise()))
              .orElseGet(() -> RobustRegression.fit(rows, NightPart.ABSORBED, start));
      if (fit.isEmpty()) {
        return Optional.empty();
      }
      parallax = Math.min(0.5, fit.get().coefficients().getEntry(0));
      double change = Math.abs(parallax - start[0]);
      if (round == ROUNDS || change < SETTLED * fit.get().coefficient(0).uncertainty()) {
        return fit.map(f -> new Known(new KnownRegression(rows, NightPart.ABSORBED, f), start[0]));
      }
    }
  }

  /** The law made linear at {@code parallax}. */
  private static Rows rows(
      Series series, ParallaxLaw law, double[] lnSize, double[] y, double parallax) {
    double[] apparent = new double[y.length];
    double[] column = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      double growth = Math.exp(lnSize[i]);
      column[i] = growth * law.slope(i, parallax * growth);
      apparent[i] = y[i] - lnSize[i] - law.lnGain(i, parallax * growth) + parallax * column[i];
    }
    Grouping nights = series.nights();
    return Rows.of(apparent, new double[][] {column}, series.stated(), nights, nights);
  }
}
