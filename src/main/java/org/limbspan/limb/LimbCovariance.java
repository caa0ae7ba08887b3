package org.limbspan.limb;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Generalised least squares for the outline's corrections when neighbouring places of the limb err
 * together.
 *
 * <p>The covariance has three parts: independent errors, as the sectors state them times a factor;
 * seeing ripple of unknown size and reach; and the Moon's relief, of known size. What is unknown is
 * not set to its likeliest value but averaged over: a short arc leaves it open, and an outline that
 * takes one value for true states too small an error. Each covariance of a grid, even in the
 * logarithms, counts by its restricted likelihood (Patterson and Thompson, Biometrika 58, 1971),
 * which allows for what the fit itself has taken up, and by what is usual of noise and reach; the
 * scatter of the estimates over the grid adds to their covariance.
 */
final class LimbCovariance {

  private static final double LEAST_RIPPLE_PX = 0.02;
  private static final double MOST_RIPPLE_PX = 12;
  private static final double RIPPLE_STEP = 1.6;

  /** A common error so many times the spread of the places would have shown. */
  private static final double MOST_SCATTERS = 4;

  /** Reach of the ripple along the limb: a degree of it is 16 arcseconds of sky. */
  private static final double[] LENGTHS_DEG = {0.6, 1, 1.6, 2.6, 4.2, 7};

  /**
   * The prior of a reach falls as exp(-reach / this). Beyond it ripple is unlikely: the rays to
   * places so far apart leave each other within some hundred metres, and what moves both is near
   * the ground and slow. A judgement, no source.
   */
  private static final double USUAL_REACH_DEG = 7;

  /** Of the stated variances, whose logarithm is known to about a factor of two. */
  private static final double[] NOISE_FACTORS = {0.6, 1, 1.7};

  private static final double NOISE_SPREAD = 0.7;
  private static final double USUAL_LENGTH_RAD = Math.toRadians(4);

  /** Covariances less likely by this much in twice the logarithm add nothing. */
  private static final double NEGLIGIBLE = 20;

  private final double[] angles;
  private final RealMatrix design;
  private final RealVector shifts;
  private final double[] variances;
  private final RealMatrix relief;
  private final RealMatrix priorWeight;
  private final RealVector priorMean;

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
    double rms = reliefOfMoon.rmsPx();
    relief = correlation(reliefOfMoon.lengthRad()).scalarMultiply(rms * rms);
    double[] weight = new double[priorSigma.length];
    for (int k = 0; k < weight.length; k++) {
      weight[k] = Double.isInfinite(priorSigma[k]) ? 0 : Math.pow(priorSigma[k], -2);
    }
    priorWeight = MatrixUtils.createRealDiagonalMatrix(weight).copy();
    this.priorMean = new ArrayRealVector(priorMean);
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
   * @param total of everything, of the prior and of what is open in the covariance
   * @param ripplePx size of the ripple, root mean square
   */
  record Solution(
      RealVector values,
      RealMatrix noise,
      RealMatrix ripple,
      RealMatrix relief,
      RealMatrix total,
      double ripplePx) {}

  /** With the common error taken from the spread of the places. */
  Solution roughly(double scatterPx) {
    double size = Math.max(LEAST_RIPPLE_PX, 0.6 * scatterPx);
    Trial only = new Trial(1, size, correlation(USUAL_LENGTH_RAD), 0);
    return mean(List.of(only), only.lack);
  }

  /** With every common error that is plausible, by its likelihood. */
  Solution solve(double scatterPx) {
    double most = Math.min(MOST_RIPPLE_PX, Math.max(0.2, MOST_SCATTERS * scatterPx));
    List<Trial> trials = new ArrayList<>();
    double least = Double.MAX_VALUE;
    for (double lengthDeg : LENGTHS_DEG) {
      RealMatrix correlation = correlation(Math.toRadians(lengthDeg));
      for (double size = LEAST_RIPPLE_PX; size < most; size *= RIPPLE_STEP) {
        for (double factor : NOISE_FACTORS) {
          Trial trial = new Trial(factor, size, correlation, 2 * lengthDeg / USUAL_REACH_DEG);
          least = Math.min(least, trial.lack);
          trials.add(trial);
        }
      }
    }
    double limit = least + NEGLIGIBLE;
    trials.removeIf(trial -> !(trial.lack < limit));
    return mean(trials, least);
  }

  /** Mean over trials weighed by their likelihood. */
  private Solution mean(List<Trial> trials, double least) {
    int size = priorMean.getDimension();
    double sum = trials.stream().mapToDouble(trial -> trial.weight(least)).sum();
    RealVector values = new ArrayRealVector(size);
    double square = 0;
    for (Trial trial : trials) {
      double share = trial.weight(least) / sum;
      values = values.add(trial.values.mapMultiply(share));
      square += share * trial.size * trial.size;
    }
    RealMatrix noise = MatrixUtils.createRealMatrix(size, size);
    RealMatrix ripple = noise;
    RealMatrix ofRelief = noise;
    RealMatrix total = noise;
    for (Trial trial : trials) {
      double share = trial.weight(least) / sum;
      RealVector off = trial.values.subtract(values);
      noise = noise.add(trial.spread(diagonal(trial.factor)).scalarMultiply(share));
      ripple =
          ripple.add(
              trial.spread(trial.correlation).scalarMultiply(share * trial.size * trial.size));
      ofRelief = ofRelief.add(trial.spread(relief).scalarMultiply(share));
      total = total.add(trial.covariance.add(off.outerProduct(off)).scalarMultiply(share));
    }
    return new Solution(values, noise, ripple, ofRelief, total, Math.sqrt(square));
  }

  private RealMatrix diagonal(double factor) {
    return MatrixUtils.createRealDiagonalMatrix(variances).scalarMultiply(factor);
  }

  /** Matern's correlation of order 3/2 over the angle: once differentiable, as a limb looks. */
  private RealMatrix correlation(double length) {
    int n = angles.length;
    double[][] k = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double apart = 2 * Math.abs(Math.sin((angles[i] - angles[j]) / 2)) / length;
        double value = (1 + apart) * Math.exp(-apart);
        k[i][j] = value;
        k[j][i] = value;
      }
    }
    return MatrixUtils.createRealMatrix(k);
  }

  /** The estimate with one covariance. */
  private final class Trial {

    private final double factor;
    private final double size;
    private final RealMatrix correlation;
    private final RealMatrix weighted;
    private final RealMatrix covariance;
    private final RealVector values;

    /** Minus twice the restricted log likelihood, with the priors of noise and reach. */
    private final double lack;

    /**
     * @param rarity minus twice the logarithm of the prior of the reach
     */
    Trial(double factor, double size, RealMatrix correlation, double rarity) {
      this.factor = factor;
      this.size = size;
      this.correlation = correlation;
      RealMatrix sigma = correlation.scalarMultiply(size * size).add(relief);
      for (int i = 0; i < variances.length; i++) {
        sigma.addToEntry(i, i, factor * variances[i]);
      }
      CholeskyDecomposition cholesky = new CholeskyDecomposition(sigma, 1e-6, 1e-14);
      weighted = cholesky.getSolver().solve(design);
      RealMatrix normal = symmetric(design.transposeMultiply(weighted).add(priorWeight));
      CholeskyDecomposition small = new CholeskyDecomposition(normal, 1e-6, 1e-18);
      covariance = symmetric(small.getSolver().getInverse());
      values =
          covariance.operate(
              weighted.transpose().operate(shifts).add(priorWeight.operate(priorMean)));
      RealVector residual = shifts.subtract(design.operate(values));
      RealVector off = values.subtract(priorMean);
      lack =
          residual.dotProduct(cholesky.getSolver().solve(residual))
              + off.dotProduct(priorWeight.operate(off))
              + logDeterminant(cholesky)
              + logDeterminant(small)
              + Math.pow(Math.log(factor) / NOISE_SPREAD, 2)
              + rarity;
    }

    double weight(double least) {
      return Math.exp(-0.5 * (lack - least));
    }

    /** What an error of the places makes of the parameters. */
    RealMatrix spread(RealMatrix error) {
      RealMatrix gain = covariance.multiplyTransposed(weighted);
      return gain.multiply(error).multiplyTransposed(gain);
    }
  }

  /** The same with its rounding evened out, which a decomposition takes for another matrix. */
  private static RealMatrix symmetric(RealMatrix matrix) {
    return matrix.add(matrix.transpose()).scalarMultiply(0.5);
  }

  private static double logDeterminant(CholeskyDecomposition cholesky) {
    RealMatrix l = cholesky.getL();
    double sum = 0;
    for (int i = 0; i < l.getRowDimension(); i++) {
      sum += 2 * Math.log(l.getEntry(i, i));
    }
    return sum;
  }
}
