package org.limbspan.limb;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * What is known of the flattening before the photograph is measured. Refraction never lengthens the
 * disc, and flattens it by 0.03 % / sin^2(altitude) (the derivative of 58.3 arcsec cot h, Meeus,
 * Astronomical Algorithms, ch. 16), so that small values are common and large ones are not excluded:
 * a Cauchy density from zero upwards.
 */
final class FlatteningPrior {

  static final FlatteningPrior USUAL = new FlatteningPrior(0.001);

  /** Pixels that are not square, and the Moon's own shape, may make it look slightly tall. */
  private static final double TALL = 0.00025;

  private static final int STEPS = 400;

  private final double scale;

  private FlatteningPrior(double scale) {
    this.scale = scale;
  }

  private double density(double f) {
    double wide = f / scale;
    double tall = f / TALL;
    return f >= 0 ? 1 / (1 + wide * wide) : Math.exp(-0.5 * tall * tall);
  }

  /**
   * The solution with the prior applied: the marginal of the flattening is multiplied by the density
   * and the other parameters follow by their regression on it.
   *
   * @param gradient of the flattening by the parameters
   */
  LimbCovariance.Solution applied(
      LimbCovariance.Solution free, double flatteningBefore, double[] gradient) {
    RealVector g = new ArrayRealVector(gradient);
    double variance = g.dotProduct(free.total().operate(g));
    double sigma = Math.sqrt(variance);
    double measured = flatteningBefore + g.dotProduct(free.values());
    double total = 0;
    double mean = 0;
    double square = 0;
    for (int i = 0; i <= STEPS; i++) {
      double f = measured + 6 * sigma * (2.0 * i / STEPS - 1);
      double unit = (f - measured) / sigma;
      double weight = density(f) * Math.exp(-0.5 * unit * unit);
      total += weight;
      mean += weight * f;
      square += weight * f * f;
    }
    if (!(total > 1e-12)) {
      return free;
    }
    mean /= total;
    double narrowed = Math.max(0.02 * variance, square / total - mean * mean);
    RealVector gain = free.total().operate(g).mapDivide(variance);
    RealMatrix keep =
        MatrixUtils.createRealIdentityMatrix(gradient.length).subtract(gain.outerProduct(g));
    RealMatrix known = gain.outerProduct(gain).scalarMultiply(narrowed);
    return new LimbCovariance.Solution(
        free.values().add(gain.mapMultiply(mean - measured)),
        sandwich(keep, free.noise()),
        sandwich(keep, free.ripple()),
        sandwich(keep, free.relief()),
        sandwich(keep, free.total()).add(known),
        free.ripplePx(),
        free.rippleLengthRad(),
        free.noiseFactor());
  }

  private static RealMatrix sandwich(RealMatrix outer, RealMatrix inner) {
    return outer.multiply(inner).multiply(outer.transpose());
  }
}
