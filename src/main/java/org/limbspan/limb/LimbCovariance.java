package org.limbspan.limb;

import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Generalised least squares for the outline's corrections when neighbouring places of the limb err
 * together, with the size and the reach of that common error estimated by restricted maximum
 * likelihood (Patterson and Thompson 1971), which allows for what the fit itself has taken up.
 *
 * <p>The covariance has three parts: independent errors, as the sectors state them times a factor;
 * seeing ripple of unknown size and reach; and the Moon's relief, of known size.
 */
final class LimbCovariance {

  private final double[] angles;
  private final RealMatrix design;
  private final RealVector shifts;
  private final double[] variances;
  private final RealMatrix relief;
  private final RealMatrix priorWeight;
  private final RealVector priorMean;
  private final double typical;

  /**
   * @param design outward motion of each place for a unit of each parameter
   * @param shifts measured outward shifts, pixels
   * @param variances of their independent errors, square pixels
   */
  LimbCovariance(
      double[] angles,
      double[][] design,
      double[] shifts,
      double[] variances,
      Relief reliefOfMoon,
      double[] priorMean,
      double[] priorSigma) {
    this.angles = angles;
    this.design = MatrixUtils.createRealMatrix(design);
    this.shifts = new ArrayRealVector(shifts);
    this.variances = variances;
    relief = kernel(reliefOfMoon.rmsPx(), reliefOfMoon.lengthRad());
    priorWeight = MatrixUtils.createRealMatrix(priorSigma.length, priorSigma.length);
    for (int k = 0; k < priorSigma.length; k++) {
      double s = priorSigma[k];
      priorWeight.setEntry(k, k, Double.isInfinite(s) ? 0 : 1 / (s * s));
    }
    this.priorMean = new ArrayRealVector(priorMean);
    double sum = 0;
    for (double v : variances) {
      sum += v;
    }
    typical = Math.sqrt(sum / variances.length);
  }

  /** Size and reach of the Moon's own relief along the limb. */
  record Relief(double rmsPx, double lengthRad) {}

  /**
   * The estimate.
   *
   * @param values corrections of the parameters
   * @param noise their covariance from independent errors
   * @param ripple from seeing
   * @param relief from the Moon's relief
   * @param total of everything, prior included
   */
  record Solution(
      RealVector values,
      RealMatrix noise,
      RealMatrix ripple,
      RealMatrix relief,
      RealMatrix total,
      double ripplePx,
      double rippleLengthRad,
      double noiseFactor) {}

  /** With the common error taken from a guess of its size. */
  Solution roughly(double residualGuessPx) {
    return at(
        new double[] {
          0, Math.log(Math.max(0.02, 0.6 * residualGuessPx)), Math.log(Math.toRadians(4))
        });
  }

  Solution solve(double residualGuessPx) {
    double[] start = {
      0, Math.log(Math.max(0.02, 0.6 * residualGuessPx)), Math.log(Math.toRadians(4))
    };
    double[] best = start;
    try {
      best =
          new SimplexOptimizer(new SimpleValueChecker(-1, 0.02))
              .optimize(
                  new MaxEval(120),
                  GoalType.MINIMIZE,
                  new ObjectiveFunction(this::lack),
                  new InitialGuess(start),
                  new NelderMeadSimplex(new double[] {0.7, 0.7, 0.7}))
              .getPoint();
    } catch (MathRuntimeException e) {
      best = start;
    }
    return at(best);
  }

  private Solution at(double[] p) {
    double factor = Math.exp(p[0]);
    RealMatrix ripple = kernel(Math.exp(p[1]), Math.exp(p[2]));
    RealMatrix noise = diagonal(factor);
    Terms terms = new Terms(noise.add(ripple).add(relief));
    RealMatrix gain = terms.gain();
    return new Solution(
        terms.values,
        spread(gain, noise),
        spread(gain, ripple),
        spread(gain, relief),
        terms.covariance,
        Math.exp(p[1]),
        Math.exp(p[2]),
        factor);
  }

  /** Minus twice the restricted log likelihood, with a mild pull to plausible sizes. */
  private double lack(double[] p) {
    if (Math.abs(p[0]) > 6 || p[1] < -7 || p[1] > 4 || p[2] < -5 || p[2] > 0.5) {
      return 1e9;
    }
    Terms terms =
        new Terms(diagonal(Math.exp(p[0])).add(kernel(Math.exp(p[1]), Math.exp(p[2]))).add(relief));
    double pull =
        Math.pow(p[0] / 1.5, 2)
            + Math.pow((p[1] - Math.log(typical)) / 2.5, 2)
            + Math.pow((p[2] - Math.log(Math.toRadians(4))) / 1.0, 2);
    return terms.lack() + pull;
  }

  private RealMatrix diagonal(double factor) {
    double[] d = new double[variances.length];
    for (int i = 0; i < d.length; i++) {
      d[i] = factor * variances[i];
    }
    return MatrixUtils.createRealDiagonalMatrix(d).copy();
  }

  /** Matern's covariance of order 3/2 over the angle: once differentiable, as a limb looks. */
  private RealMatrix kernel(double rms, double length) {
    int n = angles.length;
    double[][] k = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double apart = 2 * Math.abs(Math.sin((angles[i] - angles[j]) / 2)) / length;
        double value = rms * rms * (1 + apart) * Math.exp(-apart);
        k[i][j] = value;
        k[j][i] = value;
      }
    }
    return MatrixUtils.createRealMatrix(k);
  }

  private static RealMatrix spread(RealMatrix gain, RealMatrix covariance) {
    return gain.multiply(covariance).multiply(gain.transpose());
  }

  /** One covariance tried. */
  private final class Terms {

    private final CholeskyDecomposition cholesky;
    private final RealMatrix weighted;
    private final RealMatrix covariance;
    private final RealVector values;

    Terms(RealMatrix sigma) {
      cholesky = new CholeskyDecomposition(sigma, 1e-6, 1e-14);
      weighted = cholesky.getSolver().solve(design);
      RealMatrix normal = design.transposeMultiply(weighted).add(priorWeight);
      CholeskyDecomposition small = new CholeskyDecomposition(normal, 1e-6, 1e-18);
      DecompositionSolver solver = small.getSolver();
      covariance = solver.getInverse();
      values =
          solver.solve(weighted.transpose().operate(shifts).add(priorWeight.operate(priorMean)));
    }

    RealMatrix gain() {
      return covariance.multiply(weighted.transpose());
    }

    double lack() {
      RealVector residual = shifts.subtract(design.operate(values));
      RealVector off = values.subtract(priorMean);
      double misfit =
          residual.dotProduct(cholesky.getSolver().solve(residual))
              + off.dotProduct(priorWeight.operate(off));
      return misfit + logDeterminant(cholesky) - logDeterminant(covariance);
    }
  }

  private static double logDeterminant(CholeskyDecomposition cholesky) {
    RealMatrix l = cholesky.getL();
    double sum = 0;
    for (int i = 0; i < l.getRowDimension(); i++) {
      sum += 2 * Math.log(l.getEntry(i, i));
    }
    return sum;
  }

  private static double logDeterminant(RealMatrix positive) {
    return logDeterminant(new CholeskyDecomposition(positive, 1e-6, 1e-30));
  }
}
