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
 * excluded: a Cauchy density from zero upwards. A computed expectation replaces all but a fiftieth
 * of it, for a clock or a place that is wrong.
 */
final class FlatteningPrior {

  private static final double SCALE = 0.0006;
  private static final double TRUST = 0.98;

  /** Pixels that are not square, and the Moon's own shape, may make it look slightly tall. */
  private static final double TALL = 0.0004;

  private static final int STEPS = 600;

  private final Optional<MeasureOptions.ExpectedFlattening> expected;

  FlatteningPrior(Optional<MeasureOptions.ExpectedFlattening> expected) {
    this.expected = expected;
  }

  private static double usualDensity(double f) {
    double wide = f / SCALE;
    double tall = f / TALL;
    return 2 / (Math.PI * SCALE) * (f >= 0 ? 1 / (1 + wide * wide) : Math.exp(-0.5 * tall * tall));
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
    RealVector gain = free.total().operate(g).mapDivide(variance);
    RealMatrix keep =
        MatrixUtils.createRealIdentityMatrix(gradient.length).subtract(gain.outerProduct(g));
    RealMatrix known = gain.outerProduct(gain).scalarMultiply(moments[1]);
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
    double[] usual = usualMoments(measured, sigma);
    double[] both =
        expected
            .map(
                e ->
                    sum(
                        scaled(1 - TRUST, usual),
                        scaled(TRUST, expectedMoments(e, measured, sigma))))
            .orElse(usual);
    if (!(both[0] > 1e-9 / sigma)) {
      return new double[] {measured, sigma * sigma};
    }
    double mean = both[1] / both[0];
    return new double[] {mean, Math.max(0, both[2] / both[0] - mean * mean)};
  }

  /** Integrals of density times likelihood, by powers 0 to 2 of the flattening. */
  private static double[] usualMoments(double measured, double sigma) {
    double[] sum = new double[3];
    double step = 12.0 / STEPS;
    for (int i = 0; i <= STEPS; i++) {
      double unit = i * step - 6;
      double f = measured + unit * sigma;
      double weight = step * usualDensity(f) * normal(unit);
      sum[0] += weight;
      sum[1] += weight * f;
      sum[2] += weight * f * f;
    }
    return sum;
  }

  /** The same of a normal expectation, which may be far narrower than the measurement. */
  private static double[] expectedMoments(
      MeasureOptions.ExpectedFlattening expected, double measured, double sigma) {
    double known = Math.max(expected.uncertainty(), 1e-5);
    double both = Math.hypot(known, sigma);
    double weight = normal((measured - expected.value()) / both) / both;
    double share = known * known / (both * both);
    double mean = expected.value() + share * (measured - expected.value());
    double variance = share * sigma * sigma;
    return new double[] {weight, weight * mean, weight * (variance + mean * mean)};
  }

  private static double normal(double unit) {
    return Math.exp(-0.5 * unit * unit) / Math.sqrt(2 * Math.PI);
  }

  private static double[] scaled(double factor, double[] moments) {
    return new double[] {factor * moments[0], factor * moments[1], factor * moments[2]};
  }

  private static double[] sum(double[] a, double[] b) {
    return new double[] {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
  }

  private static RealMatrix sandwich(RealMatrix outer, RealMatrix inner) {
    return outer.multiply(inner).multiply(outer.transpose());
  }
}
