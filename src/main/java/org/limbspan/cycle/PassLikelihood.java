package org.limbspan.cycle;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.special.Gamma;

/**
 * Likelihood and evidence of a model whose readings of one pass are one draw of a multivariate
 * Student's t.
 *
 * <p>Four degrees of freedom, scale matrix k^2 (diag(u^2) + (u/2)^2 J): u stated, k one factor for
 * all, J what a night does to all its readings, taken as half a reading's own part. A slip makes
 * its own pass unlikely under every hypothesis and decides nothing; readings of one night are not
 * counted as independent.
 *
 * <p>Priors: ln k Cauchy about 0 of scale 0.3; each setup's level uniform over a factor of 10; a
 * coefficient, where the model has one, normal about 0 with variance 1. Evidence by Laplace's
 * method about the maximum with the expected information of the t distribution (K. L. Lange, R. J.
 * A. Little and J. M. G. Taylor, J. Am. Stat. Assoc. 84, 881, 1989), good to 0.3 in the logarithm
 * from a dozen readings on.
 */
final class PassLikelihood {

  static final double DEGREES = 4;
  private static final double NIGHT_SHARE = 0.5;
  private static final double FACTOR_SCALE = 0.3;
  static final double LEVEL_WIDTH_LOG = Math.log(Math.log(10));
  static final double LEAST_LOG_FACTOR = Math.log(0.05);
  static final double MOST_LOG_FACTOR = Math.log(5000);

  /** Half the width of a search about a factor that is nearly known, in the logarithm. */
  static final double NEAR = 0.1;

  private static final int MAX_ROUNDS = 100;
  private static final double[] NONE = {};
  static final double SETTLED = 1e-6;
  static final double ROOT_ACCURACY = 1e-8;
  static final int MOST_STEPS = 200;

  /** Below this share of its own size the column counts as equal to the levels. */
  static final double LEVEL = 1e-12;

  private final Rows rows;
  private final int[] sizes;
  private final int[] levelOfNight;
  private final NightProducts products;
  private final double[] ones;
  private final double logConstant;
  private final Optional<Column> column;

  private PassLikelihood(Rows rows, double nightSd) {
    this.rows = rows;
    this.sizes = rows.nights().sizes();
    this.levelOfNight = rows.levelOfNight();
    this.products = new NightProducts(rows, nightSd);
    this.ones = products.information();
    this.logConstant = logConstant(sizes) - products.logCovariance() / 2;
    this.column = Optional.empty();
  }

  private PassLikelihood(PassLikelihood other, double[] column, double[] knownCentres) {
    this.rows = other.rows;
    this.sizes = other.sizes;
    this.levelOfNight = other.levelOfNight;
    this.products = other.products;
    this.ones = other.ones;
    this.logConstant = other.logConstant;
    this.column = Optional.of(new Column(column, knownCentres));
  }

  /**
   * Of readings that share nights and levels; the values and columns of {@code rows} are not used.
   */
  static PassLikelihood of(Rows rows) {
    return new PassLikelihood(rows, NIGHT_SHARE * rows.typicalStated());
  }

  /** Of the readings of {@code series}. */
  static PassLikelihood of(Series series) {
    return of(rows(series));
  }

  /**
   * Of readings that are added to others.
   *
   * @param typicalStated of the others, of which the night's part is a share
   */
  static PassLikelihood of(Series rest, double typicalStated) {
    return new PassLikelihood(rows(rest), NIGHT_SHARE * typicalStated);
  }

  private static Rows rows(Series series) {
    return Rows.of(
        new double[series.size()],
        new double[0][],
        series.stated(),
        series.nights(),
        series.setups());
  }

  /** The same with a column whose coefficient is free. */
  PassLikelihood with(double[] values) {
    return with(values, NONE);
  }

  /**
   * The same with a column that is centred as it was for other readings.
   *
   * @param knownCentres of the first levels; those of the others follow from their readings
   */
  PassLikelihood with(double[] values, double[] knownCentres) {
    return new PassLikelihood(this, values, knownCentres);
  }

  private static double logConstant(int[] sizes) {
    double log = 0;
    for (int size : sizes) {
      log +=
          Gamma.logGamma((DEGREES + size) / 2)
              - Gamma.logGamma(DEGREES / 2)
              - size * Math.log(DEGREES * Math.PI) / 2;
    }
    return log;
  }

  /**
   * The best of a model and its weight.
   *
   * @param logLikelihood at the best levels, coefficient and factor
   * @param logEvidence with all of them integrated out
   * @param coefficient of the column, where there is one
   */
  record Outcome(
      double logLikelihood, double logEvidence, double factor, Optional<Estimate> coefficient) {}

  /** What the model makes of {@code y}, a value for each reading. */
  Outcome evaluate(double[] y) {
    return new Explained(y, NONE).outcome();
  }

  /** The same, so that further nights can be added. */
  KnownLikelihood know(double[] y) {
    Explained explained = new Explained(y, NONE);
    Mode mode = explained.mode();
    return new KnownLikelihood(
        explained.forms(),
        column.isPresent(),
        explained.medians,
        column.map(c -> c.centres).orElse(NONE),
        column.map(c -> c.size2).orElse(0.0),
        mode,
        logPosterior(mode.misfit, mode.logFactor) + logPriorOf(mode.coefficient));
  }

  /** What the model makes of {@code y} together with what is known of others. */
  Outcome evaluate(double[] y, KnownLikelihood known) {
    return known.with(
        new Explained(y, known.medians()).forms(), rows.levels().count(), logConstant);
  }

  /** Where the posterior is highest. */
  static final class Mode {

    private final double[] levels;
    private final double coefficient;
    private final double logFactor;
    private final double[] misfit;

    private Mode(double[] levels, double coefficient, double logFactor, double[] misfit) {
      this.levels = levels;
      this.coefficient = coefficient;
      this.logFactor = logFactor;
      this.misfit = misfit;
    }

    double level(int g) {
      return levels[g];
    }

    double coefficient() {
      return coefficient;
    }

    double logFactor() {
      return logFactor;
    }
  }

  /** The column about its levels' means, and its products with itself and the levels by night. */
  private final class Column {

    private final double[] centres;
    private final double[] values;
    private final double[] withOnes;
    private final double[] squares;
    private final double size2;

    private Column(double[] column, double[] knownCentres) {
      double[] withLevels = products.ofOnes(column);
      centres = quotients(levelSums(withLevels), levelSums(ones));
      System.arraycopy(knownCentres, 0, centres, 0, knownCentres.length);
      values = rows.without(centres, column);
      withOnes = products.ofOnes(values);
      squares = products.of(values, values);
      size2 = Arrays.stream(products.of(column, column)).sum();
    }
  }

  private double[] levelSums(double[] ofNights) {
    double[] sums = new double[rows.levels().count()];
    for (int b = 0; b < ofNights.length; b++) {
      sums[levelOfNight[b]] += ofNights[b];
    }
    return sums;
  }

  private static double[] quotients(double[] a, double[] b) {
    double[] quotients = new double[a.length];
    for (int g = 0; g < a.length; g++) {
      quotients[g] = a[g] / b[g];
    }
    return quotients;
  }

  /** One choice of the values to explain, as sums by night. */
  private final class Explained {

    private final double[] medians;
    private final double[] withOnes;
    private final double[] withColumn;
    private final double[] squares;

    /** The levels at which weights are found are those of {@code y} about its nights' medians. */
    private Explained(double[] y, double[] knownMedians) {
      medians = medians(y);
      System.arraycopy(knownMedians, 0, medians, 0, knownMedians.length);
      double[] rest = rows.without(medians, y);
      withOnes = products.ofOnes(rest);
      squares = products.of(rest, rest);
      withColumn = column.map(c -> products.of(c.values, rest)).orElse(ones);
    }

    /** Of the nights' means, level by level. */
    private double[] medians(double[] y) {
      return Grouping.of(levelOfNight, rows.levels().count())
          .medians(quotients(products.ofOnes(y), ones));
    }

    private NightForms forms() {
      double[] none = new double[column.isPresent() ? 0 : ones.length];
      return new NightForms(
          sizes,
          levelOfNight,
          ones,
          withOnes,
          squares,
          column.map(c -> c.squares).orElse(none),
          column.map(c -> c.withOnes).orElse(none),
          column.isPresent() ? withColumn : none);
    }

    private Outcome outcome() {
      Mode mode = mode();
      return outcome(mode.misfit, mode.logFactor, mode.coefficient);
    }

    private Mode mode() {
      double[] levels = new double[rows.levels().count()];
      double[] misfit = squares;
      double logFactor = bestLogFactor(misfit, LEAST_LOG_FACTOR, MOST_LOG_FACTOR);
      double log = logPosterior(misfit, logFactor);
      double coefficient = 0;
      for (int round = 0; round < MAX_ROUNDS; round++) {
        double before = log;
        Weighted weighted = new Weighted(this, weights(misfit, logFactor), logFactor);
        coefficient = weighted.coefficient();
        levels = weighted.levels(coefficient);
        misfit = misfit(levels, coefficient);
        logFactor = bestLogFactor(misfit, logFactor);
        log = logPosterior(misfit, logFactor) + logPriorOf(coefficient);
        if (Math.abs(log - before) < SETTLED) {
          break;
        }
      }
      return new Mode(levels, coefficient, logFactor, misfit);
    }

    /** What is left of each night's squares. */
    private double[] misfit(double[] levels, double coefficient) {
      double[] misfit = squares.clone();
      for (int b = 0; b < misfit.length; b++) {
        double level = levels[levelOfNight[b]];
        misfit[b] += level * (level * ones[b] - 2 * withOnes[b]);
      }
      column.ifPresent(
          c -> {
            for (int b = 0; b < misfit.length; b++) {
              double level = levels[levelOfNight[b]];
              misfit[b] +=
                  coefficient
                      * (coefficient * c.squares[b] + 2 * (level * c.withOnes[b] - withColumn[b]));
            }
          });
      for (int b = 0; b < misfit.length; b++) {
        misfit[b] = Math.max(0, misfit[b]);
      }
      return misfit;
    }

    private Outcome outcome(double[] misfit, double logFactor, double coefficient) {
      double[] information = new double[sizes.length];
      double factorInformation = 0;
      for (int b = 0; b < sizes.length; b++) {
        double both = DEGREES + sizes[b];
        information[b] = both / (both + 2);
        factorInformation += 2 * sizes[b] * DEGREES / (both + 2);
      }
      factorInformation = Math.max(1, factorInformation + priorInformation(logFactor));
      Weighted weighted = new Weighted(this, information, logFactor);
      double logInformation =
          weighted.logLevelInformation()
              + Math.log(factorInformation)
              + Math.log(weighted.coefficientInformation());
      int integrated = rows.levels().count() + (column.isPresent() ? 1 : 0) + 1;
      double logEvidence =
          logPosterior(misfit, logFactor)
              + logPriorOf(coefficient)
              - rows.levels().count() * LEVEL_WIDTH_LOG
              + (integrated * Math.log(2 * Math.PI) - logInformation) / 2;
      return new Outcome(
          logLikelihood(misfit, logFactor),
          logEvidence,
          Math.exp(logFactor),
          column.map(
              c -> new Estimate(coefficient, 1 / Math.sqrt(weighted.coefficientInformation()))));
    }
  }

  /** Least squares with a weight for each night. */
  private final class Weighted {

    private final double precision;
    private final double[] onOnes;
    private final double[] onValues;
    private final double[] onColumn;
    private double pull;
    private double own;

    private Weighted(Explained explained, double[] weights, double logFactor) {
      precision = Math.exp(-2 * logFactor);
      onOnes = levelSums(product(weights, ones));
      onValues = levelSums(product(weights, explained.withOnes));
      onColumn = column.map(c -> levelSums(product(weights, c.withOnes))).orElse(onOnes);
      column.ifPresent(c -> addColumn(c, explained, weights));
    }

    private void addColumn(Column c, Explained explained, double[] weights) {
      own = dot(weights, c.squares);
      pull = dot(weights, explained.withColumn);
      for (int g = 0; g < onOnes.length; g++) {
        own -= onColumn[g] * onColumn[g] / onOnes[g];
        pull -= onColumn[g] * onValues[g] / onOnes[g];
      }
      if (own < LEVEL * c.size2) {
        own = 0;
        pull = 0;
      }
    }

    private double coefficient() {
      return column.isEmpty() ? 0 : pull * precision / coefficientInformation();
    }

    /** That of the readings and of the prior; 1 where there is no column. */
    private double coefficientInformation() {
      return own * precision + 1;
    }

    private double[] levels(double coefficient) {
      double[] levels = new double[onOnes.length];
      for (int g = 0; g < levels.length; g++) {
        levels[g] = (onValues[g] - coefficient * onColumn[g]) / onOnes[g];
      }
      return levels;
    }

    private double logLevelInformation() {
      double log = 0;
      for (double each : onOnes) {
        log += Math.log(each * precision);
      }
      return log;
    }
  }

  private static double[] product(double[] a, double[] b) {
    double[] product = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      product[i] = a[i] * b[i];
    }
    return product;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private double[] weights(double[] misfit, double logFactor) {
    double precision = Math.exp(-2 * logFactor);
    double[] weights = new double[misfit.length];
    for (int b = 0; b < weights.length; b++) {
      weights[b] = (DEGREES + sizes[b]) / (DEGREES + misfit[b] * precision);
    }
    return weights;
  }

  /** The best near {@code start}, or anywhere if it is not near. */
  private double bestLogFactor(double[] misfit, double start) {
    boolean near =
        logPosteriorSlope(misfit, start - NEAR) > 0 && logPosteriorSlope(misfit, start + NEAR) < 0;
    return near
        ? bestLogFactor(misfit, start - NEAR, start + NEAR)
        : bestLogFactor(misfit, LEAST_LOG_FACTOR, MOST_LOG_FACTOR);
  }

  /** Where the slope of the posterior is none; an end, where it has but one sign. */
  private double bestLogFactor(double[] misfit, double from, double to) {
    UnivariateFunction slope = log -> logPosteriorSlope(misfit, log);
    if (slope.value(from) <= 0) {
      return from;
    }
    if (slope.value(to) >= 0) {
      return to;
    }
    return new BracketingNthOrderBrentSolver(ROOT_ACCURACY, 5).solve(MOST_STEPS, slope, from, to);
  }

  private double logPosterior(double[] misfit, double logFactor) {
    return logLikelihood(misfit, logFactor) + logFactorPrior(logFactor);
  }

  static double logFactorPrior(double logFactor) {
    double deviation = logFactor / FACTOR_SCALE;
    return -Math.log1p(deviation * deviation) - Math.log(Math.PI * FACTOR_SCALE);
  }

  /** Derivative of {@link #logFactorPrior}. */
  static double logFactorPriorSlope(double logFactor) {
    double deviation = logFactor / FACTOR_SCALE;
    return -2 * deviation / (FACTOR_SCALE * (1 + deviation * deviation));
  }

  /** Derivative of {@link #logPosterior} by the logarithm of the factor. */
  private double logPosteriorSlope(double[] misfit, double logFactor) {
    double precision = Math.exp(-2 * logFactor);
    double slope = logFactorPriorSlope(logFactor) - rows.size();
    for (int b = 0; b < misfit.length; b++) {
      double scaled = misfit[b] * precision;
      slope += (DEGREES + sizes[b]) * scaled / (DEGREES + scaled);
    }
    return slope;
  }

  /** Curvature of the Cauchy prior of the factor, its sign turned. */
  static double priorInformation(double logFactor) {
    double square = Math.pow(logFactor / FACTOR_SCALE, 2);
    return 2 * (1 - square) / Math.pow(FACTOR_SCALE * (1 + square), 2);
  }

  private double logLikelihood(double[] misfit, double logFactor) {
    double precision = Math.exp(-2 * logFactor);
    double log = logConstant - rows.size() * logFactor;
    for (int b = 0; b < misfit.length; b++) {
      log -= (DEGREES + sizes[b]) / 2 * Math.log(1 + misfit[b] * precision / DEGREES);
    }
    return log;
  }

  private double logPriorOf(double coefficient) {
    return column.isEmpty() ? 0 : logCoefficientPrior(coefficient);
  }

  static double logCoefficientPrior(double coefficient) {
    return -(coefficient * coefficient + Math.log(2 * Math.PI)) / 2;
  }
}
