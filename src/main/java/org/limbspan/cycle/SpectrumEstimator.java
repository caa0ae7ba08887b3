package org.limbspan.cycle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.RealVector;
import org.limbspan.sky.Site;

/**
 * The Moon's periods from readings with nothing known beforehand: not the month of the phases, not
 * the theory of the inequalities, no size and no phase of any of them. For readings over years, as
 * the strictest form of {@link SelfReliantEstimator}.
 *
 * <p>Lines are taken in one after the other at the period, between 6 and 40 days, that explains
 * most of what is left; after each, all periods and amplitudes and the parallax are fitted anew. A
 * line stays if it lowers the sum of squares by more than 3 ln(n) + 2 ln(periods tried): the
 * criterion of G. Schwarz (Ann. Stat. 6, 461, 1978) for three parameters, and a toll for the
 * search. What is too weak to be found stays in the noise and, where its period lies near, in the
 * lines: over one year the anomalistic month may so be off by several hundredths of a day; over
 * three, by some thousandths.
 *
 * <p>No more than about 1500 readings are looked at, taken night by night.
 */
public final class SpectrumEstimator {

  private static final double SHORTEST_DAYS = 6;
  private static final double LONGEST_DAYS = 40;
  private static final double STEPS_PER_TURN = 4;
  private static final double LEAST_SPAN_DAYS = 200;
  private static final int LEAST_READINGS = 60;
  private static final int MOST_READINGS = 1500;
  private static final int MOST_LINES = 12;

  private final Series series;
  private final FreeLines lines;

  private SpectrumEstimator(Series series, Site site, AltitudeSource altitudes) {
    this.series = series;
    this.lines = new FreeLines(series, ParallaxLaw.of(series.observations(), site, altitudes));
  }

  /** Empty for fewer than 60 readings or less than 200 days, or where no line stands out. */
  public static Optional<Spectrum> estimate(
      List<Observation> observations, Site site, AltitudeSource altitudes) {
    Series all = Series.of(observations, site).where(altitudes::isKnown);
    if (all.size() < LEAST_READINGS || all.spanDays() < LEAST_SPAN_DAYS) {
      return Optional.empty();
    }
    return new SpectrumEstimator(all.thinned(MOST_READINGS), site, altitudes).spectrum();
  }

  private Optional<Spectrum> spectrum() {
    FreeLines.State best = lines.none();
    Optional<FreeLines.State> more = withOneMore(best);
    while (more.isPresent()) {
      best = more.get();
      more = best.lineCount() < MOST_LINES ? withOneMore(best) : Optional.empty();
    }
    return result(best);
  }

  private Optional<FreeLines.State> withOneMore(FreeLines.State now) {
    double toll = 3 * Math.log(series.size()) + 2 * Math.log(rates().size());
    return lines
        .with(now, rates())
        .filter(more -> lines.costUnder(now, more) - lines.costUnder(more, more) > toll);
  }

  private List<Double> rates() {
    double step = 1 / (STEPS_PER_TURN * series.spanDays());
    List<Double> rates = new ArrayList<>();
    for (double rate = 1 / LONGEST_DAYS; rate < 1 / SHORTEST_DAYS; rate += step) {
      rates.add(rate);
    }
    return rates;
  }

  private Optional<Spectrum> result(FreeLines.State state) {
    return state
        .fit()
        .filter(fit -> state.lineCount() > 0)
        .map(
            fit -> {
              List<SpectralLine> found = new ArrayList<>();
              for (int k = 0; k < state.lineCount(); k++) {
                found.add(line(state, fit, k));
              }
              return new Spectrum(
                  found,
                  MoonDistance.of(fit.coefficient(state.model().parallaxIndex())),
                  fit.noise(),
                  series.size());
            });
  }

  private static SpectralLine line(FreeLines.State state, RobustRegression.Fit fit, int k) {
    Estimate rate = fit.coefficient(k);
    int cosine = state.model().cosineIndex(k);
    RealVector amplitudes = fit.coefficients().getSubVector(cosine, 2);
    double size = amplitudes.getNorm();
    RealVector direction = amplitudes.mapDivide(size);
    double variance =
        fit.covariance()
            .getSubMatrix(cosine, cosine + 1, cosine, cosine + 1)
            .operate(direction)
            .dotProduct(direction);
    return new SpectralLine(
        new Estimate(1 / rate.value(), rate.uncertainty() / (rate.value() * rate.value())),
        new Estimate(size, Math.sqrt(variance)));
  }
}
