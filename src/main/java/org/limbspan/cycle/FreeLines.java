package org.limbspan.cycle;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;

/** Harmonic models of which every rate is free, grown line by line on the same readings. */
final class FreeLines {

  private static final double FIRST_SPREAD = 0.06;
  private static final double FIRST_PARALLAX = 1 / 60.0;
  private static final double TOLERANCE = 1e-9;
  private static final int ROUNDS = 4;

  private final Series series;
  private final ParallaxLaw parallax;
  private final double[] days;
  private final double[] y;

  FreeLines(Series series, ParallaxLaw parallax) {
    this.series = series;
    this.parallax = parallax;
    Instant first = series.get(0).takenAt();
    Instant last = series.get(series.size() - 1).takenAt();
    this.days = series.daysSince(first.plusSeconds(first.until(last, ChronoUnit.SECONDS) / 2));
    this.y = series.lnUnrefracted();
  }

  /**
   * A model and what it came to.
   *
   * @param weights how much each reading is trusted
   * @param fit empty before the first line
   */
  record State(
      HarmonicModel model,
      int lineCount,
      RealVector parameters,
      Noise noise,
      RealVector weights,
      Optional<RobustRegression.Fit> fit) {}

  /** No line at all. */
  State none() {
    HarmonicModel model = model(0);
    RealVector parameters = new ArrayRealVector(new double[] {FIRST_PARALLAX});
    double[] weights = OutlierWeights.ofSpread(plainRows(y), FIRST_SPREAD);
    return new State(
        model,
        0,
        parameters,
        new Noise(1, series.typicalStated() / 2),
        new ArrayRealVector(weights),
        Optional.empty());
  }

  /** One line more, at the rate that explains most of what is left; empty where that fails. */
  Optional<State> with(State now, List<Double> rates) {
    double[] rest = y.clone();
    double[] values = now.model().at(now.parameters().toArray()).values();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= values[i];
    }
    return best(rest, whitening(now), rates).flatMap(start -> refined(now, start));
  }

  /** Sum of squares of a model at its own minimum, in units of another's noise. */
  double costUnder(State state, State units) {
    return new HarmonicFit(state.model(), y, whitening(units))
        .from(state.parameters().toArray(), TOLERANCE)
        .map(HarmonicFit.Minimum::cost)
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** Rate, cosine and sine. */
  private Optional<RealVector> best(double[] rest, Whitening whitening, List<Double> rates) {
    Optional<RealVector> best = Optional.empty();
    double most = Double.NEGATIVE_INFINITY;
    for (double rate : rates) {
      NormalEquations equations =
          new NormalEquations(whitening, rows(rest, new double[][] {wave(rate, 0), wave(rate, 1)}));
      double log = equations.explained();
      if (log > most) {
        most = log;
        best =
            equations
                .solve(1)
                .map(s -> new ArrayRealVector(new double[] {rate}).append(s.coefficients()));
      }
    }
    return best;
  }

  private double[] wave(double rate, int quarterTurns) {
    double[] wave = new double[days.length];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = Math.cos(2 * Math.PI * rate * days[i] - quarterTurns * Math.PI / 2);
    }
    return wave;
  }

  private Optional<State> refined(State now, RealVector line) {
    int count = now.lineCount() + 1;
    HarmonicModel model = model(count);
    double[] start = joined(now, line);
    return new HarmonicFit(model, y, whitening(now))
        .from(start, TOLERANCE)
        .flatMap(minimum -> robust(model, count, minimum.parameters()));
  }

  private Optional<State> robust(HarmonicModel model, int count, RealVector start) {
    RealVector parameters = start;
    Optional<RobustRegression.Fit> fit = Optional.empty();
    for (int round = 0; round < ROUNDS; round++) {
      HarmonicModel.At at = model.at(parameters.toArray());
      fit =
          RobustRegression.fit(
              rows(at.apparent(y, parameters.toArray()), at.columns()),
              NightPart.RANDOM,
              parameters.toArray());
      if (fit.isEmpty()) {
        return Optional.empty();
      }
      parameters = fit.get().coefficients();
    }
    return fit.map(
        f -> new State(model, count, f.coefficients(), f.noise(), f.weights(), Optional.of(f)));
  }

  private double[] joined(State now, RealVector line) {
    int before = now.lineCount();
    RealVector rates = now.parameters().getSubVector(0, before);
    RealVector others =
        now.parameters().getSubVector(before, now.parameters().getDimension() - before);
    return rates.append(line.getEntry(0)).append(others).append(line.getSubVector(1, 2)).toArray();
  }

  private HarmonicModel model(int count) {
    List<Line> lines = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      List<Integer> multiples = new ArrayList<>(Collections.nCopies(count, 0));
      multiples.set(k, 1);
      lines.add(new Line(0, multiples, Double.POSITIVE_INFINITY));
    }
    return new HarmonicModel(days, lines, count, parallax);
  }

  private Whitening whitening(State state) {
    return NoiseSearch.whitening(
        plainRows(y),
        state.weights().toArray(),
        state.noise().statedFactor(),
        state.noise().nightSd());
  }

  private Rows plainRows(double[] values) {
    return rows(values, new double[0][]);
  }

  private Rows rows(double[] values, double[][] columns) {
    return Rows.of(values, columns, series.stated(), series.nights(), series.setups());
  }
}
