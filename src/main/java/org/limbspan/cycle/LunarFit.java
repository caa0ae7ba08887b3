package org.limbspan.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;
import org.limbspan.sky.Site;

/**
 * The harmonic model of {@link LunarLines} fitted to readings alone.
 *
 * <p>A grid of anomalistic rates over the fullest 400 days finds the neighbourhood, Levenberg and
 * Marquardt the minimum; robust regression of the model made linear there estimates noise and
 * slips, then single steps over twice the time until all of it is in. On the way no more than 500
 * readings are looked at, taken night by night; the last fit is of all, noise and slips included.
 * Sizes are those seen along each reading's axis with the flattening by refraction taken off.
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

  /**
   * What came out; parameters in the order of {@link HarmonicModel}.
   *
   * @param madeLinearAt parameters about which the regression was done
   */
  record Result(
      Instant epoch, int parallaxIndex, RobustRegression.Fit fit, RealVector madeLinearAt) {}

  /**
   * The first stretch of a fit, and all that its outcome depends on.
   *
   * @param readings no more than 500 within 400 days
   */
  record Beginning(List<Observation> readings, Site site, AltitudeSource source, Instant epoch) {

    /** From a grid of rates on. */
    Optional<Result> search() {
      return new LunarFit(Series.of(readings, site), site, source, epoch).fromNothing();
    }
  }

  /** A result and the curve that it draws. */
  record Outcome(Result result, SizeCurve curve) {}

  /** Empty where the readings are too few or too short to carry a period. */
  static Optional<Outcome> of(Series readings, Site site, AltitudeSource source) {
    return of(readings, site, source, Beginning::search);
  }

  /**
   * The same with a search of the caller's.
   *
   * @param search gives what {@link Beginning#search} gives, perhaps from memory
   */
  static Optional<Outcome> of(
      Series readings,
      Site site,
      AltitudeSource source,
      Function<Beginning, Optional<Result>> search) {
    Series series = readings.where(source::isKnown);
    if (series.size() < LEAST_READINGS) {
      return Optional.empty();
    }
    if (!series.hasRest()) {
      return ofAll(series, site, source, search).map(r -> new Outcome(r, SizeCurve.of(r)));
    }
    Series past = series.past();
    return series
        .memory()
        .of(source)
        .cycle
        .of(
            new CycleMemory.Key(past.observations(), site, source),
            () -> ofAll(past, site, source, search).map(r -> Known.of(r, past, site, source)))
        .flatMap(known -> known.with(series.rest(), site, source));
  }

  /** What the settled past says. */
  record Known(Result settled, SizeCurve curve, KnownRegression regression) {

    private static Known of(Result settled, Series past, Site site, AltitudeSource source) {
      Rows rows =
          new LunarFit(past, site, source, settled.epoch()).rows(settled.madeLinearAt().toArray());
      return new Known(
          settled,
          SizeCurve.of(settled),
          new KnownRegression(rows, NightPart.RANDOM, settled.fit()));
    }

    /** The rest added, the model made linear where it was for the past. */
    private Optional<Outcome> with(Series rest, Site site, AltitudeSource source) {
      Rows rows =
          new LunarFit(rest, site, source, settled.epoch()).rows(settled.madeLinearAt().toArray());
      return regression
          .with(rows)
          .map(KnownRegression.Grown::fit)
          .filter(LunarFit::isPlausible)
          .map(
              fit ->
                  new Result(settled.epoch(), settled.parallaxIndex(), fit, settled.madeLinearAt()))
          .map(result -> new Outcome(result, SizeCurve.of(result).after(curve)));
    }
  }

  /** All readings at once, none of them taken as settled. */
  static Optional<Result> ofAll(
      Series series,
      Site site,
      AltitudeSource source,
      Function<Beginning, Optional<Result>> search) {
    Instant epoch = epoch(series);
    Window window = Window.fullest(series, FIRST_WINDOW_DAYS);
    Series part = window.of(series).thinned(SEARCHED);
    Optional<Result> result = search.apply(new Beginning(part.observations(), site, source, epoch));
    if (part.size() == series.size()) {
      return result;
    }
    while (result.isPresent() && !window.covers(series)) {
      window = window.doubled();
      Series wider = window.of(series).thinned(SEARCHED);
      result = new LunarFit(wider, site, source, epoch).goOn(result.get().fit());
    }
    LunarFit all = new LunarFit(series, site, source, epoch);
    return result.flatMap(some -> all.end(some.fit()));
  }

  /** Near the middle, and seldom moved by one more reading: a multiple of a part of the span. */
  private static Instant epoch(Series series) {
    long first = series.get(0).takenAt().getEpochSecond();
    long last = series.get(series.size() - 1).takenAt().getEpochSecond();
    long grain = Long.highestOneBit(Math.max(1, (last - first) / 8));
    long middle = first + (last - first) / 2;
    return Instant.ofEpochSecond(Math.floorDiv(middle, grain) * grain + grain / 2);
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

  /** On from what fewer readings gave, their noise taken for that of these. */
  private Optional<Result> goOn(RobustRegression.Fit fewer) {
    return settle(
        fewer.coefficients().toArray(),
        (rows, from) -> RobustRegression.step(rows, NightPart.RANDOM, from, fewer.noise()));
  }

  /** The same, and the noise of these to end with. */
  private Optional<Result> end(RobustRegression.Fit fewer) {
    return goOn(fewer)
        .flatMap(
            near ->
                settle(
                    near.fit().coefficients().toArray(),
                    (rows, from) ->
                        RobustRegression.fitNear(rows, NightPart.RANDOM, from, fewer.noise())));
  }

  private Optional<Result> refine(double[] start) {
    return settle(start, (rows, from) -> RobustRegression.fit(rows, NightPart.RANDOM, from));
  }

  /** A regression of the model made linear at some parameters. */
  private interface Regression {
    Optional<RobustRegression.Fit> fit(Rows rows, double[] from);
  }

  /**
   * Made linear and fitted in turn, until what is left out of the rate by that, of second order in
   * the change of phase at the ends of the readings, does not matter.
   */
  private Optional<Result> settle(double[] start, Regression regression) {
    double[] parameters = start;
    for (int round = 1; ; round++) {
      Optional<RobustRegression.Fit> fit = regression.fit(rows(parameters), parameters);
      if (fit.isEmpty() || !isPlausible(fit.get())) {
        return Optional.empty();
      }
      double step = fit.get().coefficients().getEntry(0) - parameters[0];
      double leftOut = Math.PI * series.spanDays() / 2 * step * step;
      if (round == MAX_ROUNDS || leftOut < 0.01 * fit.get().coefficient(0).uncertainty()) {
        RealVector madeLinearAt = new ArrayRealVector(parameters);
        return fit.map(f -> new Result(epoch, model.parallaxIndex(), f, madeLinearAt));
      }
      parameters = fit.get().coefficients().toArray();
    }
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
    double factor = noise.statedFactor();
    NormalEquations equations = new NightSums(rest, weights).equations(noise.nightSd() / factor);
    return equations
        .solve(factor)
        .map(
            s ->
                new Trial(
                    new ArrayRealVector(new double[] {rate}).append(s.coefficients()),
                    equations.logRestrictedLikelihood(factor)));
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
    return new Rows(
        at.apparent(y, parameters),
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
