package org.limbspan.cycle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * Nonlinear least squares of a harmonic model by Levenberg and Marquardt, in whitened rows; priors
 * are further rows.
 */
final class HarmonicFit {

  private static final int MOST_STEPS = 50;

  private final HarmonicModel model;
  private final double[] y;
  private final Whitening whitening;
  private final double[] priorPrecision;
  private final List<Integer> held;

  HarmonicFit(HarmonicModel model, double[] y, Whitening whitening) {
    this.model = model;
    this.y = y;
    this.whitening = whitening;
    this.priorPrecision = model.priorPrecision();
    this.held = new ArrayList<>();
    for (int j = 0; j < priorPrecision.length; j++) {
      if (priorPrecision[j] > 0) {
        held.add(j);
      }
    }
  }

  /**
   * A minimum.
   *
   * @param cost sum of squares there, priors included
   */
  record Minimum(RealVector parameters, double cost) {}

  /**
   * The minimum that {@code start} leads to.
   *
   * @param tolerance relative change of the cost at which to stop
   * @return empty where none is reached in 50 steps
   */
  Optional<Minimum> from(double[] start, double tolerance) {
    try {
      LeastSquaresOptimizer.Optimum optimum = optimum(start, tolerance);
      return Optional.of(new Minimum(optimum.getPoint(), optimum.getCost() * optimum.getCost()));
    } catch (MathIllegalStateException notReached) {
      return Optional.empty();
    }
  }

  private LeastSquaresOptimizer.Optimum optimum(double[] start, double tolerance) {
    return new LevenbergMarquardtOptimizer()
        .withCostRelativeTolerance(tolerance)
        .withParameterRelativeTolerance(1e-10)
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .target(target())
                .model(this::valuesAndDerivatives)
                .lazyEvaluation(false)
                .maxEvaluations(MOST_STEPS)
                .maxIterations(MOST_STEPS)
                .build());
  }

  private double[] target() {
    double[] target = new double[y.length + held.size()];
    System.arraycopy(whitening.apply(y), 0, target, 0, y.length);
    return target;
  }

  private Pair<RealVector, RealMatrix> valuesAndDerivatives(RealVector point) {
    HarmonicModel.At at = model.at(point.toArray());
    RealVector values = new ArrayRealVector(y.length + held.size());
    RealMatrix jacobian = new Array2DRowRealMatrix(values.getDimension(), point.getDimension());
    values.setSubVector(0, new ArrayRealVector(whitening.apply(at.values()), false));
    for (int j = 0; j < point.getDimension(); j++) {
      double[] column = whitening.apply(at.columns()[j]);
      for (int i = 0; i < column.length; i++) {
        jacobian.setEntry(i, j, column[i]);
      }
    }
    for (int k = 0; k < held.size(); k++) {
      int j = held.get(k);
      double root = Math.sqrt(priorPrecision[j]);
      values.setEntry(y.length + k, root * point.getEntry(j));
      jacobian.setEntry(y.length + k, j, root);
    }
    return new Pair<>(values, jacobian);
  }
}
