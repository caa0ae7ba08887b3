package org.limbspan.limb;

import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * What is known of the flattening before the photograph is measured. Refraction never lengthens the
 * disc, and flattens it by 0.03 % / sin^2(altitude) (the derivative of 58.3 arcsec cot h, Meeus,
 * Astronomical Algorithms, ch. 16), so that small values are common and large ones are not
 * excluded: a Cauchy density from zero upwards. A computed expectation replaces nine tenths of it.
 */
final class FlatteningPrior {

  private static final double SCALE = 0.0006;
  private static final double TRUST = 0.9;

  /** Pixels that are not square, and the Moon's own shape, may make it look slightly tall. */
  private static final double TALL = 0.0004;

  private static final int STEPS = 600;

  private final Optional<MeasureOptions.ExpectedFlattening> expected;

  FlatteningPrior(Optional<MeasureOptions.ExpectedFlattening> expected) {
    this.expected = expected;
  }

  double density(double f) {
    double wide = f / SCALE;
    double tall = f / TALL;
    double usual =
        2 / (Math.PI * SCALE) * (f >= 0 ? 1 / (1 + wide * wide) : Math.exp(-0.5 * tall * tall));
    if (expected.isEmpty()) {
      return usual;
    }
    double sigma = Math.max(expected.get().uncertainty(), 1e-5);
    double unit = (f - expected.get().value()) / sigma;
    return TRUST * Math.exp(-0.5 * unit * unit) / (sigma * Math.sqrt(2 * Math.PI))
        + (1 - TRUST) * usual;
  }

  /**
   * The solution with the prior applied: the marginal of the flattening is multiplied by the
   * density and the other parameters follow by their regression on it.
   *
   * @param gradient of the flattening by the parameters
   */
  LimbCovariance.Solution applied(
      LimbCovariance.Solution free, double flatteningBefore, double[] gradient) {
    RealVector g = new ArrayRealVector(gradient);
    double variance = g.dotProduct(free.total().operate(g));
    double measured = flatteningBefore + g.dotProduct(free.values());
    double[] moments = moments(measured, Math.sqrt(variance));
    double narrowed = Math.max(0.02 * variance, moments[1]);
    RealVector gain = free.total().operate(g).mapDivide(variance);
    RealMatrix keep =
        MatrixUtils.createRealIdentityMatrix(gradient.length).subtract(gain.outerProduct(g));
    RealMatrix known = gain.outerProduct(gain).scalarMultiply(narrowed);
    return new LimbCovariance.Solution(
        free.values().add(gain.mapMultiply(moments[0] - measured)),
        sandwich(keep, free.noise()),
        sandwich(keep, free.ripple()),
        sandwich(keep, free.relief()),
        sandwich(keep, free.total()).add(known),
        free.ripplePx());
  }

  /** Mean and variance of the flattening after the measurement. */
  private double[] moments(double measured, double sigma) {
    double total = 0;
    double mean = 0;
    double square = 0;
    for (int i = 0; i <= STEPS; i++) {
      double unit = 6 * (2.0 * i / STEPS - 1);
      double f = measured + unit * sigma;
      double weight = density(f) * Math.exp(-0.5 * unit * unit);
      total += weight;
      mean += weight * f;
      square += weight * f * f;
    }
    if (!(total > 1e-9)) {
      return new double[] {measured, sigma * sigma};
    }
    mean /= total;
    return new double[] {mean, square / total - mean * mean};
  }

  private static RealMatrix sandwich(RealMatrix outer, RealMatrix inner) {
    return outer.multiply(inner).multiply(outer.transpose());
  }
}
