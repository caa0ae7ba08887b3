package org.limbspan.cycle;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
  private final double[][] fixedCos;
  private final double[][] fixedSin;

  HarmonicModel(double[] days, List<Line> lines, int freeRates, ParallaxLaw parallax) {
    this.days = days;
    this.lines = List.copyOf(lines);
    this.freeRates = freeRates;
    this.parallax = parallax;
    this.fixedCos = new double[lines.size()][];
    this.fixedSin = new double[lines.size()][];
    Map<Double, Integer> seen = new HashMap<>();
    for (int k = 0; k < lines.size(); k++) {
      double rate = lines.get(k).fixedPerDay();
      Integer same = seen.putIfAbsent(rate, k);
      if (same == null) {
        fixedCos[k] = new double[days.length];
        fixedSin[k] = new double[days.length];
        turns(rate, fixedCos[k], fixedSin[k]);
      } else {
        fixedCos[k] = fixedCos[same];
        fixedSin[k] = fixedSin[same];
      }
    }
  }

  private void turns(double rate, double[] cos, double[] sin) {
    for (int i = 0; i < days.length; i++) {
      double angle = 2 * Math.PI * rate * days[i];
      cos[i] = Math.cos(angle);
      sin[i] = Math.sin(angle);
    }
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
    private final double[][] freeCos = new double[freeRates][days.length];
    private final double[][] freeSin = new double[freeRates][days.length];

    private At(double[] parameters) {
      columns = new double[parameterCount()][days.length];
      values = new double[days.length];
      for (int m = 0; m < freeRates; m++) {
        turns(parameters[m], freeCos[m], freeSin[m]);
      }
      for (int k = 0; k < lines.size(); k++) {
        addLine(k, parameters);
      }
      if (parallax.isPresent()) {
        addParallax(parameters[parallaxIndex()]);
      }
    }

    private void addLine(int k, double[] parameters) {
      Line line = lines.get(k);
      double[] cos = columns[cosineIndex(k)];
      double[] sin = columns[cosineIndex(k) + 1];
      double c = parameters[cosineIndex(k)];
      double s = parameters[cosineIndex(k) + 1];
      System.arraycopy(fixedCos[k], 0, cos, 0, cos.length);
      System.arraycopy(fixedSin[k], 0, sin, 0, sin.length);
      for (int m = 0; m < line.multiples().size(); m++) {
        int multiple = line.multiples().get(m);
        for (int turn = 0; turn < Math.abs(multiple); turn++) {
          rotate(cos, sin, freeCos[m], freeSin[m], Integer.signum(multiple));
        }
      }
      for (int i = 0; i < cos.length; i++) {
        values[i] += c * cos[i] + s * sin[i];
      }
      for (int m = 0; m < line.multiples().size(); m++) {
        double multiple = 2 * Math.PI * line.multiples().get(m);
        for (int i = 0; i < cos.length; i++) {
          columns[m][i] += multiple * days[i] * (s * cos[i] - c * sin[i]);
        }
      }
    }

    /** By the theorem of addition: a sine costs far more than four products. */
    private static void rotate(
        double[] cos, double[] sin, double[] byCos, double[] bySin, int sense) {
      for (int i = 0; i < cos.length; i++) {
        double old = cos[i];
        double turned = sense * bySin[i];
        cos[i] = old * byCos[i] - sin[i] * turned;
        sin[i] = sin[i] * byCos[i] + old * turned;
      }
    }

    private void addParallax(double value) {
      double[] stretch = new double[values.length];
      double[] own = new double[values.length];
      for (int i = 0; i < values.length; i++) {
        double growth = Math.exp(values[i]);
        double slope = parallax.slope(i, value * growth);
        own[i] = slope * growth;
        stretch[i] = 1 + own[i] * value;
        values[i] += parallax.lnGain(i, value * growth);
      }
      for (double[] column : columns) {
        for (int i = 0; i < stretch.length; i++) {
          column[i] *= stretch[i];
        }
      }
      columns[parallaxIndex()] = own;
    }

    double[] values() {
      return values;
    }

    /** {@code y} as the model made linear here sees it: a sum of columns times parameters. */
    double[] apparent(double[] y, double[] parameters) {
      double[] apparent = y.clone();
      for (int i = 0; i < apparent.length; i++) {
        apparent[i] -= values[i];
      }
      for (int j = 0; j < parameters.length; j++) {
        for (int i = 0; i < apparent.length; i++) {
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
