package org.limbspan.cycle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.limbspan.sky.Site;

/**
 * Sizes high over low within passes, beside prediction.
 *
 * <p>Readings of one pass, setup and axis have one free level: plate scale, month and whatever a
 * night does to all its readings cancel. A pair gives its ratio directly; three or more readings
 * give the ratio between lowest and highest by least squares along the predicted shape. The noise
 * factor comes from the differences within nights alone. Predictions are topocentric and along the
 * axis, refraction included.
 */
public final class NightRatioEstimator {

  private final Series series;
  private final Site site;
  private final double factor;

  private NightRatioEstimator(Series series, Site site, double factor) {
    this.series = series;
    this.site = site;
    this.factor = factor;
  }

  /** The night pairs among {@code observations} of one rig, in any order. */
  public static NightRatios estimate(List<Observation> observations, Site site) {
    return estimate(Series.of(observations, site), site);
  }

  /** The same over a series. */
  public static NightRatios estimate(Series series, Site site) {
    Optional<RobustRegression.Fit> fit = regression(series);
    Optional<Estimate> slope = fit.map(f -> f.coefficient(0));
    Optional<Double> factor = fit.map(f -> f.noise().statedFactor());
    return new NightRatios(
        pairs(series, site, factor.orElse(1.0)),
        slope,
        slope.map(SlopeEstimator::verdict).orElse(Verdict.TOO_FEW),
        factor);
  }

  private static Optional<RobustRegression.Fit> regression(Series series) {
    Series past = series.past();
    Optional<KnownRegression> known =
        series
            .memory()
            .ratio
            .of(
                past.observations(),
                () -> KnownRegression.of(rows(past), NightPart.ABSORBED, new double[] {1}));
    return series.hasRest()
        ? known.flatMap(k -> k.with(rows(series.rest()))).map(KnownRegression.Grown::fit)
        : known.map(KnownRegression::fit);
  }

  private static List<NightPair> pairs(Series series, Site site, double factor) {
    Series past = series.past();
    List<NightPair> settled =
        series
            .memory()
            .pairs
            .of(
                new CycleMemory.Key(past.observations(), site, factor),
                () -> new NightRatioEstimator(past, site, factor).pairs());
    if (!series.hasRest()) {
      return settled;
    }
    List<NightPair> all = new ArrayList<>(settled);
    all.addAll(new NightRatioEstimator(series.rest(), site, factor).pairs());
    return all;
  }

  private static Rows rows(Series series) {
    Grouping nights = series.nights();
    return Rows.of(
        series.lnObserved(),
        new double[][] {series.lnPredicted()},
        series.stated(),
        nights,
        nights);
  }

  private List<NightPair> pairs() {
    Map<Series.Night, List<Observation>> nights = new LinkedHashMap<>();
    for (int i = 0; i < series.size(); i++) {
      nights.computeIfAbsent(series.night(i), n -> new ArrayList<>()).add(series.get(i));
    }
    List<NightPair> pairs = new ArrayList<>();
    nights.forEach(
        (night, readings) -> {
          if (readings.size() > 1) {
            pairs.add(pair(night, readings));
          }
        });
    return pairs;
  }

  private NightPair pair(Series.Night night, List<Observation> readings) {
    Comparator<Observation> byAltitude = Comparator.comparingDouble(o -> o.sight().altitudeDeg());
    Observation low = readings.stream().min(byAltitude).orElseThrow();
    Observation high = readings.stream().max(byAltitude).orElseThrow();
    double predicted = Math.log(high.predictedArcmin() / low.predictedArcmin());
    Estimate observed = logRatio(readings, low, high);
    double ratio = Math.exp(observed.value());
    Verdict verdict = Verdict.of(observed, predicted, Math.abs(predicted) / 2);
    return new NightPair(
        night.pass(),
        PassNumber.transitNear(high.sight(), site),
        low.takenAt(),
        high.takenAt(),
        low.sight().altitudeDeg(),
        high.sight().altitudeDeg(),
        night.axis(),
        night.setup(),
        readings.size(),
        ratio,
        ratio * observed.uncertainty(),
        Math.exp(predicted),
        verdict);
  }

  private Estimate logRatio(List<Observation> readings, Observation low, Observation high) {
    double span = Math.log(high.predictedArcmin() / low.predictedArcmin());
    double direct = Math.log(high.observedArcmin() / low.observedArcmin());
    double directUncertainty =
        factor * Math.hypot(high.relativeUncertainty(), low.relativeUncertainty());
    if (readings.size() == 2) {
      return new Estimate(direct, directUncertainty);
    }
    Noise noise = new Noise(factor, 0);
    return RobustRegression.fit(
            rows(Series.of(readings, site)), NightPart.ABSORBED, new double[] {1}, noise)
        .map(fit -> fit.coefficient(0).times(span))
        .filter(shaped -> shaped.uncertainty() < directUncertainty)
        .orElse(new Estimate(direct, directUncertainty));
  }
}
