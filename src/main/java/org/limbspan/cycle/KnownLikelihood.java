package org.limbspan.cycle;

import static org.limbspan.cycle.PassLikelihood.DEGREES;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * What {@link PassLikelihood} says of many readings, about its maximum to second order, so that
 * further nights can be added without going through the old ones.
 *
 * <p>Parameters in this order: the levels, the coefficient where there is a column, ln of the
 * factor. The expansion has the gradient and the second derivatives of the likelihood itself; where
 * these have no maximum, the information expected of the t distribution instead. The added nights
 * count exactly. They are few ({@link Milestone}), so that the maximum moves by a fraction of its
 * width, and what is left out, of third order, by some thousandths in the logarithm.
 *
 * <p>Evidence as there, by Laplace's method with the expected information of all nights.
 */
final class KnownLikelihood {

  private static final int MAX_ROUNDS = 100;
  private static final double POSITIVE = 1e-13;

  private final boolean hasColumn;
  private final double[] medians;
  private final double[] centres;
  private final double columnSize2;
  private final double[] point;
  private final double value;
  private final double[] gradient;
  private final double[][] curvature;
  private final Expected expected;

  /**
   * @param medians about which the levels are counted
   * @param centres of the column, level by level
   * @param columnSize2 square of the column, levels left in
   * @param mode the maximum
   * @param value of the logarithm of the posterior there
   */
  KnownLikelihood(
      NightForms nights,
      boolean hasColumn,
      double[] medians,
      double[] centres,
      double columnSize2,
      PassLikelihood.Mode mode,
      double value) {
    this.hasColumn = hasColumn;
    this.medians = medians;
    this.centres = centres;
    this.columnSize2 = columnSize2;
    this.value = value;
    int levels = medians.length;
    this.point = new double[levels + (hasColumn ? 2 : 1)];
    this.gradient = new double[point.length];
    this.curvature = new double[point.length][point.length];
    this.expected = new Expected(levels);
    for (int g = 0; g < levels; g++) {
      point[g] = mode.level(g);
    }
    point[point.length - 1] = mode.logFactor();
    if (hasColumn) {
      point[levels] = mode.coefficient();
    }
    expected.add(nights);
    expand(nights);
    if (!isMaximum()) {
      expect();
    }
  }

  double[] medians() {
    return medians;
  }

  double[] centres() {
    return centres;
  }

  private int levelCount() {
    return medians.length;
  }

  private double coefficient() {
    return hasColumn ? point[levelCount()] : 0;
  }

  private double logFactor() {
    return point[point.length - 1];
  }

  private void expand(NightForms nights) {
    int c = levelCount();
    int k = point.length - 1;
    double precision = Math.exp(-2 * logFactor());
    for (int b = 0; b < nights.count(); b++) {
      int g = nights.levelOfNight[b];
      double misfit = nights.misfit(b, point[g], coefficient());
      double both = DEGREES + nights.sizes[b];
      double scaled = misfit * precision;
      double far = DEGREES + scaled;
      double weight = both / far;
      double slope = weight * precision / 2;
      double bend = weight * weight * precision * precision / (2 * both);
      double twist = both * DEGREES / (far * far) * precision;
      double byLevel = nights.byLevel(b, point[g], coefficient());
      gradient[g] -= slope * byLevel;
      gradient[k] += weight * scaled - nights.sizes[b];
      curvature[g][g] += 2 * slope * nights.ones[b] - bend * byLevel * byLevel;
      addBoth(g, k, -twist * byLevel);
      curvature[k][k] += 2 * both * DEGREES * scaled / (far * far);
      if (hasColumn) {
        double byColumn = nights.byCoefficient(b, point[g], coefficient());
        gradient[c] -= slope * byColumn;
        addBoth(g, c, 2 * slope * nights.columnWithOnes[b] - bend * byLevel * byColumn);
        addBoth(c, k, -twist * byColumn);
        curvature[c][c] += 2 * slope * nights.columnSquares[b] - bend * byColumn * byColumn;
      }
    }
    gradient[k] += PassLikelihood.logFactorPriorSlope(logFactor());
    curvature[k][k] += PassLikelihood.priorInformation(logFactor());
    if (hasColumn) {
      gradient[c] -= coefficient();
      curvature[c][c] += 1;
    }
  }

  private void addBoth(int i, int j, double value) {
    curvature[i][j] += value;
    curvature[j][i] += value;
  }

  private boolean isMaximum() {
    return root(curvature).isPresent();
  }

  /** The expected information in place of the curvature. */
  private void expect() {
    int c = levelCount();
    int k = point.length - 1;
    double precision = Math.exp(-2 * logFactor());
    for (double[] row : curvature) {
      Arrays.fill(row, 0);
    }
    for (int g = 0; g < c; g++) {
      curvature[g][g] = expected.onOnes[g] * precision;
      if (hasColumn) {
        addBoth(g, c, expected.onColumn[g] * precision);
      }
    }
    if (hasColumn) {
      curvature[c][c] = expected.onSquares * precision + 1;
    }
    curvature[k][k] = expected.factorInformation(logFactor());
  }

  private static Optional<CholeskyDecomposition> root(double[][] matrix) {
    double[][] unit = new double[matrix.length][matrix.length];
    for (int i = 0; i < unit.length; i++) {
      if (!(matrix[i][i] > 0)) {
        return Optional.empty();
      }
      for (int j = 0; j <= i; j++) {
        unit[i][j] = matrix[i][j] / Math.sqrt(matrix[i][i] * matrix[j][j]);
        unit[j][i] = unit[i][j];
      }
    }
    try {
      return Optional.of(
          new CholeskyDecomposition(new Array2DRowRealMatrix(unit, false), 1e-9, POSITIVE));
    } catch (MathIllegalArgumentException indefinite) {
      return Optional.empty();
    }
  }

  /** What the t distribution lets expect of the nights' information, but for the factor. */
  private static final class Expected {

    private final double[] onOnes;
    private final double[] onColumn;
    private double onSquares;
    private double onFactor;

    private Expected(int levels) {
      onOnes = new double[levels];
      onColumn = new double[levels];
    }

    private Expected(Expected other, int levels) {
      onOnes = Arrays.copyOf(other.onOnes, levels);
      onColumn = Arrays.copyOf(other.onColumn, levels);
      onSquares = other.onSquares;
      onFactor = other.onFactor;
    }

    private void add(NightForms nights) {
      for (int b = 0; b < nights.count(); b++) {
        double both = DEGREES + nights.sizes[b];
        double share = both / (both + 2);
        int g = nights.levelOfNight[b];
        onOnes[g] += share * nights.ones[b];
        onColumn[g] += share * nights.columnWithOnes[b];
        onSquares += share * nights.columnSquares[b];
        onFactor += 2 * nights.sizes[b] * DEGREES / (both + 2);
      }
    }

    private double factorInformation(double logFactor) {
      return Math.max(1, onFactor + PassLikelihood.priorInformation(logFactor));
    }

    /** Of the coefficient, free of the levels. */
    private double ofColumn(double size2) {
      double own = onSquares;
      for (int g = 0; g < onOnes.length; g++) {
        own -= onColumn[g] * onColumn[g] / onOnes[g];
      }
      return own < PassLikelihood.LEVEL * size2 ? 0 : own;
    }
  }

  /** What is known without anything added. */
  PassLikelihood.Outcome outcome() {
    return outcome(point, value, expected);
  }

  /**
   * What comes out with further nights.
   *
   * @param nights about {@link #medians} and {@link #centres}; levels numbered on from the known
   * @param levels of them all
   * @param logConstant the part of their likelihood that does not depend on anything
   */
  PassLikelihood.Outcome with(NightForms nights, int levels, double logConstant) {
    Expected all = new Expected(expected, levels);
    all.add(nights);
    Addition addition = new Addition(nights, levels);
    double log = addition.climb();
    return outcome(addition.at, log + logConstant, all);
  }

  private PassLikelihood.Outcome outcome(double[] at, double logPosterior, Expected all) {
    int levels = all.onOnes.length;
    double logFactor = at[at.length - 1];
    double precision = Math.exp(-2 * logFactor);
    double coefficient = hasColumn ? at[levels] : 0;
    double ofCoefficient = hasColumn ? all.ofColumn(columnSize2) * precision + 1 : 1;
    double logInformation = Math.log(all.factorInformation(logFactor)) + Math.log(ofCoefficient);
    for (double each : all.onOnes) {
      logInformation += Math.log(each * precision);
    }
    double logEvidence =
        logPosterior
            - levels * PassLikelihood.LEVEL_WIDTH_LOG
            + (at.length * Math.log(2 * Math.PI) - logInformation) / 2;
    double logPriors =
        PassLikelihood.logFactorPrior(logFactor)
            + (hasColumn ? PassLikelihood.logCoefficientPrior(coefficient) : 0);
    return new PassLikelihood.Outcome(
        logPosterior - logPriors,
        logEvidence,
        Math.exp(logFactor),
        hasColumn
            ? Optional.of(new Estimate(coefficient, 1 / Math.sqrt(ofCoefficient)))
            : Optional.empty());
  }

  /** The way to the maximum of what is known and what is added, levels and factor in turn. */
  private final class Addition {

    private final NightForms nights;
    private final int levels;

    /** Of the parameter here for each parameter that is known. */
    private final int[] known;

    private final double[] from;
    private final double[] at;

    private Addition(NightForms nights, int levels) {
      this.nights = nights;
      this.levels = levels;
      this.known = new int[point.length];
      this.from = new double[levels + point.length - levelCount()];
      for (int i = 0; i < point.length; i++) {
        known[i] = i < levelCount() ? i : i + levels - levelCount();
        from[known[i]] = point[i];
      }
      this.at = from.clone();
    }

    private double coefficientHere() {
      return hasColumn ? at[levels] : 0;
    }

    private double climb() {
      double log = logPosterior();
      for (int round = 0; round < MAX_ROUNDS; round++) {
        double before = log;
        solveLevels();
        solveFactor();
        log = logPosterior();
        if (Math.abs(log - before) < PassLikelihood.SETTLED) {
          break;
        }
      }
      return log;
    }

    private double change(int i) {
      return at[known[i]] - point[i];
    }

    private double logPosterior() {
      double log = value;
      for (int i = 0; i < point.length; i++) {
        log += gradient[i] * change(i);
        for (int j = 0; j < point.length; j++) {
          log -= change(i) * curvature[i][j] * change(j) / 2;
        }
      }
      double logFactor = at[at.length - 1];
      double precision = Math.exp(-2 * logFactor);
      for (int b = 0; b < nights.count(); b++) {
        double both = DEGREES + nights.sizes[b];
        log -= both / 2 * Math.log1p(misfit(b) * precision / DEGREES) + nights.sizes[b] * logFactor;
      }
      return log;
    }

    private double misfit(int b) {
      return nights.misfit(b, at[nights.levelOfNight[b]], coefficientHere());
    }

    /** Least squares with the nights' weights, the factor being what it is. */
    private void solveLevels() {
      int size = at.length - 1;
      double[][] matrix = new double[size][size];
      double[] right = new double[size];
      int last = point.length - 1;
      for (int i = 0; i < last; i++) {
        right[known[i]] = gradient[i] - curvature[i][last] * change(last);
        for (int j = 0; j < last; j++) {
          matrix[known[i]][known[j]] = curvature[i][j];
        }
      }
      double precision = Math.exp(-2 * at[size]);
      double coefficient = hasColumn ? from[levels] : 0;
      for (int b = 0; b < nights.count(); b++) {
        int g = nights.levelOfNight[b];
        double weight = precision * (DEGREES + nights.sizes[b]) / (DEGREES + misfit(b) * precision);
        matrix[g][g] += weight * nights.ones[b];
        right[g] -= weight * nights.byLevel(b, from[g], coefficient) / 2;
        if (hasColumn) {
          matrix[g][levels] += weight * nights.columnWithOnes[b];
          matrix[levels][g] += weight * nights.columnWithOnes[b];
          matrix[levels][levels] += weight * nights.columnSquares[b];
          right[levels] -= weight * nights.byCoefficient(b, from[g], coefficient) / 2;
        }
      }
      double[] change = solution(matrix, right);
      for (int i = 0; i < size; i++) {
        at[i] = from[i] + change[i];
      }
    }

    private double[] solution(double[][] matrix, double[] right) {
      double[] scaled = new double[right.length];
      for (int i = 0; i < scaled.length; i++) {
        scaled[i] = right[i] / Math.sqrt(matrix[i][i]);
      }
      double[] solution =
          root(matrix)
              .orElseThrow(() -> new IllegalStateException("a maximum without curvature"))
              .getSolver()
              .solve(new ArrayRealVector(scaled, false))
              .toArray();
      for (int i = 0; i < scaled.length; i++) {
        solution[i] /= Math.sqrt(matrix[i][i]);
      }
      return solution;
    }

    private void solveFactor() {
      int last = point.length - 1;
      double constant = gradient[last];
      for (int i = 0; i < last; i++) {
        constant -= curvature[last][i] * change(i);
      }
      double[] misfit = new double[nights.count()];
      for (int b = 0; b < misfit.length; b++) {
        misfit[b] = misfit(b);
      }
      at[at.length - 1] = factor(constant, misfit);
    }

    private double factor(double constant, double[] misfit) {
      double from = PassLikelihood.LEAST_LOG_FACTOR;
      double to = PassLikelihood.MOST_LOG_FACTOR;
      double near = at[at.length - 1];
      if (slope(constant, misfit, near - PassLikelihood.NEAR) > 0
          && slope(constant, misfit, near + PassLikelihood.NEAR) < 0) {
        from = near - PassLikelihood.NEAR;
        to = near + PassLikelihood.NEAR;
      }
      if (slope(constant, misfit, from) <= 0) {
        return from;
      }
      if (slope(constant, misfit, to) >= 0) {
        return to;
      }
      return new BracketingNthOrderBrentSolver(PassLikelihood.ROOT_ACCURACY, 5)
          .solve(PassLikelihood.MOST_STEPS, log -> slope(constant, misfit, log), from, to);
    }

    private double slope(double constant, double[] misfit, double logFactor) {
      int last = point.length - 1;
      double slope = constant - curvature[last][last] * (logFactor - point[last]);
      double precision = Math.exp(-2 * logFactor);
      for (int b = 0; b < misfit.length; b++) {
        double scaled = misfit[b] * precision;
        slope += (DEGREES + nights.sizes[b]) * scaled / (DEGREES + scaled) - nights.sizes[b];
      }
      return slope;
    }
  }
}
