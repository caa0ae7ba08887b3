package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Test;

/** Held to the definition of the density and to brute integration over level and factor. */
class PassLikelihoodTest {

  private static final double[] Y = {
    0.3, -0.8, 1.1, 0.2, -0.4, 0.9, -1.6, 0.5, 0.1, -0.2, 0.7, -0.9, 1.4, -0.3
  };
  private static final List<Integer> NIGHTS = List.of(0, 0, 1, 1, 2, 3, 3, 4, 4, 5, 6, 6, 7, 7);
  private static final double STATED = 1;
  private static final double DEGREES = 4;

  private final PassLikelihood.Outcome outcome =
      PassLikelihood.of(
              Rows.of(
                  Y,
                  new double[0][],
                  stated(),
                  Grouping.by(NIGHTS),
                  Grouping.by(Collections.nCopies(Y.length, "setup"))))
          .evaluate(Y);

  @Test
  void likelihoodIsTheProductOfTheDensities() {
    double best = Double.NEGATIVE_INFINITY;
    for (double level = -0.6; level < 0.6; level += 0.005) {
      best = Math.max(best, logLikelihood(level, Math.log(outcome.factor())));
    }
    assertThat(outcome.logLikelihood()).isCloseTo(best, within(1e-3));
  }

  @Test
  void evidenceIsTheIntegral() {
    GaussIntegratorFactory rules = new GaussIntegratorFactory();
    GaussIntegrator levels = rules.legendre(60, -2, 2);
    GaussIntegrator factors = rules.legendre(60, Math.log(0.1), Math.log(10));
    double integral =
        factors.integrate(
            logFactor ->
                Math.exp(-Math.log1p(Math.pow(logFactor / 0.3, 2)))
                    / (Math.PI * 0.3)
                    * levels.integrate(level -> Math.exp(logLikelihood(level, logFactor)))
                    / Math.log(10));
    assertThat(outcome.logEvidence()).isCloseTo(Math.log(integral), within(0.3));
  }

  private static double logLikelihood(double level, double logFactor) {
    double log = 0;
    for (int first = 0; first < Y.length; ) {
      int end = first + 1;
      while (end < Y.length && NIGHTS.get(end).equals(NIGHTS.get(first))) {
        end++;
      }
      log += logDensity(Arrays.copyOfRange(Y, first, end), level, Math.exp(logFactor));
      first = end;
    }
    return log;
  }

  /** Multivariate t with scale matrix k^2 (I + J/4). */
  private static double logDensity(double[] y, double level, double factor) {
    int m = y.length;
    RealMatrix scale = new Array2DRowRealMatrix(m, m);
    double[] rest = new double[m];
    for (int i = 0; i < m; i++) {
      rest[i] = y[i] - level;
      for (int j = 0; j < m; j++) {
        scale.setEntry(i, j, factor * factor * ((i == j ? 1 : 0) + 0.25));
      }
    }
    LUDecomposition lu = new LUDecomposition(scale);
    double square = 0;
    double[] solved = lu.getSolver().getInverse().operate(rest);
    for (int i = 0; i < m; i++) {
      square += rest[i] * solved[i];
    }
    return Gamma.logGamma((DEGREES + m) / 2)
        - Gamma.logGamma(DEGREES / 2)
        - m * Math.log(DEGREES * Math.PI) / 2
        - Math.log(lu.getDeterminant()) / 2
        - (DEGREES + m) / 2 * Math.log1p(square / DEGREES);
  }

  private static double[] stated() {
    double[] stated = new double[Y.length];
    Arrays.fill(stated, STATED);
    return stated;
  }
}
