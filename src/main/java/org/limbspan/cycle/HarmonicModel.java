package org.limbspan.cycle;

import java.util.List;

/**
 * A sum of lines, seen from a site: y = G + p(parallax e^G), G = sum of c cos + s sin.
 *
 * <p>Parameters in this order: the free rates (turns per day), the parallax where there is one,
 * then cosine and sine of each line. Derivatives are analytic.
 */
final class HarmonicModel {

  private final double[] days;
  private final List<Line> lines;
  private final int freeRates;
  private final ParallaxLaw parallax;

  HarmonicModel(double[] days, List<Line> lines, int freeRates, ParallaxLaw parallax) {
    this.days = days;
    this.lines = List.copyOf(lines);
    this.freeRates = freeRates;
    this.parallax = parallax;
  }

  int parameterCount() {
    return freeRates + parallaxCount() + 2 * lines.size();
  }

  private int parallaxCount() {
    return parallax.isPresent() ? 1 : 0;
  }

  /** Position of the parallax among the parameters. */
  int parallaxIndex() {
    return freeRates;
  }

  /** Position of a line's cosine among the parameters; its sine follows. */
  int cosineIndex(int line) {
    return freeRates + parallaxCount() + 2 * line;
  }

  double[] priorPrecision() {
    double[] precision = new double[parameterCount()];
    for (int k = 0; k < lines.size(); k++) {
      precision[cosineIndex(k)] = lines.get(k).priorPrecision();
      precision[cosineIndex(k) + 1] = precision[cosineIndex(k)];
    }
    if (parallax.isPresent()) {
      precision[parallaxIndex()] = ParallaxLaw.PRIOR_PRECISION;
    }
    return precision;
  }

  /** Model values and derivatives at one choice of the parameters. */
  final class At {

    private final double[] values;
    private final double[][] columns;

    private At(double[] parameters) {
      columns = new double[parameterCount()][days.length];
      double[] sum = new double[days.length];
      for (int k = 0; k < lines.size(); k++) {
        addLine(k, parameters, sum);
      }
      values = sum;
      if (parallax.isPresent()) {
        addParallax(parameters[parallaxIndex()], sum);
      }
    }

    private void addLine(int k, double[] parameters, double[] sum) {
      Line line = lines.get(k);
      double turn = 2 * Math.PI * line.rate(parameters);
      int at = cosineIndex(k);
      double c = parameters[at];
      double s = parameters[at + 1];
      for (int i = 0; i < days.length; i++) {
        double cos = Math.cos(turn * days[i]);
        double sin = Math.sin(turn * days[i]);
        columns[at][i] = cos;
        columns[at + 1][i] = sin;
        sum[i] += c * cos + s * sin;
        double change = 2 * Math.PI * days[i] * (s * cos - c * sin);
        for (int m = 0; m < line.multiples().size(); m++) {
          columns[m][i] += line.multiples().get(m) * change;
        }
      }
    }

    private void addParallax(double value, double[] sum) {
      for (int i = 0; i < sum.length; i++) {
        double growth = Math.exp(sum[i]);
        double slope = parallax.slope(i, value * growth);
        values[i] = sum[i] + parallax.lnGain(i, value * growth);
        for (double[] column : columns) {
          column[i] *= 1 + slope * value * growth;
        }
        columns[parallaxIndex()][i] = slope * growth;
      }
    }

    double[] values() {
      return values;
    }

    /** {@code y} as the model made linear here sees it: a sum of columns times parameters. */
    double[] apparent(double[] y, double[] parameters) {
      double[] apparent = y.clone();
      for (int i = 0; i < apparent.length; i++) {
        apparent[i] -= values[i];
        for (int j = 0; j < parameters.length; j++) {
          apparent[i] += columns[j][i] * parameters[j];
        }
      }
      return apparent;
    }

    double[][] columns() {
      return columns;
    }
  }

  At at(double[] parameters) {
    return new At(parameters);
  }
}
