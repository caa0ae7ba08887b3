package org.limbspan.cycle;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;
import org.limbspan.sky.Site;

/**
 * The harmonic model of {@link LunarLines} fitted to readings alone.
 *
 * <p>A grid of anomalistic rates over the fullest 400 days finds the neighbourhood, Levenberg and
 * Marquardt the minimum; robust regression of the model made linear there estimates noise and
 * slips, then everything again over twice the time until all of it is in. On the way no more than
 * 500 readings are looked at, taken night by night; the last step is with all. Sizes are those seen
 * along each reading's axis with the flattening by refraction taken off.
 */
final class LunarFit {

  static final double SHORTEST_DAYS = 20;
  static final double LONGEST_DAYS = 35;

  private static final double FIRST_WINDOW_DAYS = 400;
  private static final double GRID_STEPS_PER_TURN = 6;
  private static final double FIRST_PARALLAX = 1 / 60.0;

  /** Relative spread of sizes over the months, generously. */
  private static final double FIRST_SPREAD = 0.06;

  /** Enough to tell minima apart; the regression that follows goes on from there. */
  private static final double TOLERANCE = 1e-5;

  /** Scatter over stated scatter from which the search is done again with the better figure. */
  private static final double MISJUDGED = 2;

  private static final int SEARCHED = 500;
  private static final int PEAKS = 4;
  private static final int LEAST_READINGS = 8;
  private static final int MAX_ROUNDS = 8;

  private final Series series;
  private final Instant epoch;
  private final HarmonicModel model;
  private final double[] y;

  private LunarFit(Series series, Site site, AltitudeSource source, Instant epoch) {
    this.series = series;
    this.epoch = epoch;
    this.model =
        new HarmonicModel(
            series.daysSince(epoch),
            LunarLines.LINES,
            1,
            ParallaxLaw.of(series.observations(), site, source));
    this.y = series.lnUnrefracted();
  }

  /** What came out; parameters in the order of {@link HarmonicModel}. */
  record Result(Instant epoch, HarmonicModel model, RobustRegression.Fit fit) {

    double ratePerDay() {
      return fit.coefficients().getEntry(0);
    }
  }

  /** Empty where the readings are too few or too short to carry a period. */
  static Optional<Result> of(Series readings, Site site, AltitudeSource source) {
    Series series = readings.where(source::isKnown);
    if (series.size() < LEAST_READINGS) {
      return Optional.empty();
    }
    Instant first = series.get(0).takenAt();
    Instant last = series.get(series.size() - 1).takenAt();
    Instant epoch = first.plusSeconds(first.until(last, ChronoUnit.SECONDS) / 2);
    Window window = Window.fullest(series, FIRST_WINDOW_DAYS);
    Series part = window.of(series).thinned(SEARCHED);
    Optional<Result> result = new LunarFit(part, site, source, epoch).fromNothing();
    while (result.isPresent() && part.size() < series.size()) {
      part = window.covers(series) ? series : window.doubled().of(series).thinned(SEARCHED);
      window = window.doubled();
      double[] start = result.get().fit().coefficients().toArray();
      result = new LunarFit(part, site, source, epoch).refine(start);
    }
    return result;
  }

  private Optional<Result> fromNothing() {
    double[] weights = OutlierWeights.ofSpread(rows(start(1 / LONGEST_DAYS)), FIRST_SPREAD);
    Noise noise = new Noise(1, series.typicalStated() / 2);
    Optional<Result> result = search(noise, weights);
    boolean misjudged = result.map(r -> r.fit().noise().statedFactor() > MISJUDGED).orElse(false);
    return misjudged
        ? result.flatMap(r -> search(r.fit().noise(), r.fit().weights().toArray()))
        : result;
  }

  private Optional<Result> search(Noise noise, double[] weights) {
    return best(noise, weights).flatMap(m -> refine(m.parameters().toArray()));
  }

  /** The deepest of the minima that the best points of the grid lead to. */
  private Optional<HarmonicFit.Minimum> best(Noise noise, double[] weights) {
    HarmonicFit fit =
        new HarmonicFit(
            model,
            y,
            NoiseSearch.whitening(
                rows(start(1 / LONGEST_DAYS)), weights, noise.statedFactor(), noise.nightSd()));
    return peaks(grid(noise, weights)).stream()
        .flatMap(trial -> fit.from(trial.parameters().toArray(), TOLERANCE).stream())
        .min(Comparator.comparingDouble(HarmonicFit.Minimum::cost));
  }

  private Optional<Result> refine(double[] start) {
    double[] parameters = start;
    Optional<RobustRegression.Fit> fit = Optional.empty();
    for (int round = 0; round < MAX_ROUNDS; round++) {
      fit = RobustRegression.fit(rows(parameters), NightPart.RANDOM, parameters);
      if (fit.isEmpty() || !isPlausible(fit.get())) {
        return Optional.empty();
      }
      double step = fit.get().coefficients().getEntry(0) - parameters[0];
      parameters = fit.get().coefficients().toArray();
      if (Math.abs(step) < 0.01 * fit.get().coefficient(0).uncertainty()) {
        break;
      }
    }
    return fit.map(f -> new Result(epoch, model, f));
  }

  private static boolean isPlausible(RobustRegression.Fit fit) {
    double days = 1 / fit.coefficients().getEntry(0);
    return days > SHORTEST_DAYS && days < LONGEST_DAYS;
  }

  private record Trial(RealVector parameters, double logLikelihood) {}

  private List<Trial> grid(Noise noise, double[] weights) {
    double spanDays = Math.max(LONGEST_DAYS, series.spanDays());
    double step = 1 / (GRID_STEPS_PER_TURN * spanDays);
    List<Trial> trials = new ArrayList<>();
    for (double rate = 1 / LONGEST_DAYS; rate < 1 / SHORTEST_DAYS; rate += step) {
      linear(rate, noise, weights).ifPresent(trials::add);
    }
    return trials;
  }

  private static List<Trial> peaks(List<Trial> trials) {
    List<Trial> peaks = new ArrayList<>();
    for (int i = 0; i < trials.size(); i++) {
      double own = trials.get(i).logLikelihood();
      boolean below = i == 0 || trials.get(i - 1).logLikelihood() < own;
      boolean above = i == trials.size() - 1 || trials.get(i + 1).logLikelihood() < own;
      if (below && above) {
        peaks.add(trials.get(i));
      }
    }
    return peaks.stream()
        .sorted(Comparator.comparingDouble(Trial::logLikelihood).reversed())
        .limit(PEAKS)
        .toList();
  }

  /** Best parameters at a given rate, the model made linear about no swing at all. */
  private Optional<Trial> linear(double rate, Noise noise, double[] weights) {
    Rows rest = rows(start(rate)).withoutFirstColumn(rate);
    Whitening whitening =
        NoiseSearch.whitening(rest, weights, noise.statedFactor(), noise.nightSd());
    NormalEquations equations = new NormalEquations(whitening, rest);
    return equations
        .solve(1)
        .map(
            s ->
                new Trial(
                    new ArrayRealVector(new double[] {rate}).append(s.coefficients()),
                    equations.logRestrictedLikelihood(1)));
  }

  private double[] start(double rate) {
    double[] parameters = new double[model.parameterCount()];
    parameters[0] = rate;
    parameters[model.parallaxIndex()] = FIRST_PARALLAX;
    return parameters;
  }

  /** The model made linear at {@code parameters}, as a regression for all of them. */
  private Rows rows(double[] parameters) {
    HarmonicModel.At at = model.at(parameters);
    double[] apparent = y.clone();
    for (int i = 0; i < apparent.length; i++) {
      apparent[i] -= at.values()[i];
      for (int j = 0; j < parameters.length; j++) {
        apparent[i] += at.columns()[j][i] * parameters[j];
      }
    }
    return new Rows(
        apparent,
        at.columns(),
        model.priorPrecision(),
        series.stated(),
        series.nights(),
        series.setups());
  }

  /** A stretch of time, [from, to). */
  private record Window(Instant from, Instant to) {

    static Window fullest(Series series, double days) {
      Duration length = Duration.ofSeconds(Math.round(days * 86400));
      int best = 0;
      int most = 0;
      int end = 0;
      for (int i = 0; i < series.size(); i++) {
        Instant to = series.get(i).takenAt().plus(length);
        while (end < series.size() && series.get(end).takenAt().isBefore(to)) {
          end++;
        }
        if (end - i > most) {
          most = end - i;
          best = i;
        }
      }
      Instant from = series.get(best).takenAt();
      return new Window(from, from.plus(length));
    }

    Window doubled() {
      Duration half = Duration.between(from, to).dividedBy(2);
      return new Window(from.minus(half), to.plus(half));
    }

    boolean covers(Series series) {
      return !series.get(0).takenAt().isBefore(from)
          && series.get(series.size() - 1).takenAt().isBefore(to);
    }

    Series of(Series series) {
      return series.between(from, to);
    }
  }
}
