package org.limbspan.scale;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.hipparchus.special.Gamma;
import org.limbspan.scale.SharedError.Source;

/**
 * The plate scale of a setup: the mean of its calibrations, weighted by uncertainty.
 *
 * <p>Definition: the mean of the logarithms of the scales, with weights that sum to 1; its variance
 * by the law of propagation for correlated quantities (JCGM 100:2008, 5.2.2 with F.1.2.3). Errors
 * of one sheet, one tape or one pair of stars are fully correlated: ten calibrations with one sheet
 * average the pixels, never the sheet.
 *
 * <p>Weights come from the independent parts within a series (calibrations that share all their
 * sources) and, between series, from what those do not share. Generalised least squares with the
 * whole covariance matrix is not used: where correlated parts outweigh independent ones it gives
 * negative weights and a mean outside all of its values, and when the matrix is built from measured
 * values it prefers the smaller of two (R. W. Peelle, 1987, known as Peelle's pertinent puzzle).
 * With positive weights the mean is unbiased, its variance is still exact, and for a single series
 * both ways give the same.
 *
 * <p>Agreement: chi-squared of the logarithms about their mean (Birge, Phys. Rev. 40, 207, 1932).
 * Whether a distance was measured afresh each time is not known. For the mean the careful answer is
 * that it was not, and its error is common; for the agreement that it was, and it may scatter.
 */
public final class ScaleAverage {

  private final List<Term> terms;

  private ScaleAverage(List<Calibration> calibrations) {
    this.terms = calibrations.stream().map(Term::of).toList();
  }

  /**
   * The mean of {@code calibrations}, 1 or more, all in one unit.
   *
   * @throws IllegalArgumentException if there is no calibration, or two units
   */
  public static MeanScale of(List<Calibration> calibrations) {
    if (calibrations.isEmpty()) {
      throw new IllegalArgumentException("calibrations: expected 1 or more");
    }
    LengthUnit unit = calibrations.get(0).measured().unit();
    if (calibrations.stream().anyMatch(each -> each.measured().unit() != unit)) {
      throw new IllegalArgumentException("calibrations: expected one unit, found px and mm");
    }
    return new ScaleAverage(calibrations).mean(unit);
  }

  private MeanScale mean(LengthUnit unit) {
    double[] weights = weights();
    double log = 0;
    double independentVariance = 0;
    Map<Source, Double> shared = new LinkedHashMap<>();
    for (int i = 0; i < weights.length; i++) {
      Term term = terms.get(i);
      double weight = weights[i];
      log += weight * term.log();
      independentVariance += square(weight * term.independent());
      term.shared().forEach((source, u) -> shared.merge(source, weight * u, Double::sum));
    }
    double commonVariance = shared.values().stream().mapToDouble(ScaleAverage::square).sum();
    double scale = Math.exp(log);
    return withAgreement(
        new PlateScale(
            scale,
            scale * Math.sqrt(independentVariance),
            scale * Math.sqrt(commonVariance),
            unit));
  }

  /** Weights of the terms, positive, summing to 1. */
  private double[] weights() {
    Map<Set<Source>, Double> precisionOfSeries =
        terms.stream()
            .collect(
                Collectors.groupingBy(Term::sources, Collectors.summingDouble(Term::precision)));
    Predicate<Source> partial = source -> !commonToAll(source);
    double[] weights =
        terms.stream()
            .mapToDouble(
                term -> {
                  double ofSeries = precisionOfSeries.getOrDefault(term.sources(), 0.0);
                  double betweenSeries = 1 / (1 / ofSeries + term.sharedVariance(partial));
                  return term.precision() / ofSeries * betweenSeries;
                })
            .toArray();
    double sum = Arrays.stream(weights).sum();
    return Arrays.stream(weights).map(weight -> weight / sum).toArray();
  }

  private boolean commonToAll(Source source) {
    return terms.stream().allMatch(term -> term.shared().containsKey(source));
  }

  private MeanScale withAgreement(PlateScale scale) {
    int freedom = terms.size() - 1;
    if (freedom == 0) {
      return new MeanScale(scale, 1, OptionalDouble.empty(), OptionalDouble.empty());
    }
    double chiSquared = chiSquared();
    return new MeanScale(
        scale,
        terms.size(),
        OptionalDouble.of(Math.sqrt(chiSquared / freedom)),
        OptionalDouble.of(Gamma.regularizedGammaQ(freedom / 2.0, chiSquared / 2)));
  }

  private double chiSquared() {
    Predicate<Source> scatters =
        source -> source.kind() == SharedError.Kind.TARGET_DISTANCE || !commonToAll(source);
    double[] precisions =
        terms.stream()
            .mapToDouble(term -> 1 / (square(term.independent()) + term.sharedVariance(scatters)))
            .toArray();
    double sum = 0;
    double weighted = 0;
    for (int i = 0; i < precisions.length; i++) {
      sum += precisions[i];
      weighted += precisions[i] * terms.get(i).log();
    }
    double chiSquared = 0;
    for (int i = 0; i < precisions.length; i++) {
      chiSquared += precisions[i] * square(terms.get(i).log() - weighted / sum);
    }
    return chiSquared;
  }

  private static double square(double value) {
    return value * value;
  }
}
