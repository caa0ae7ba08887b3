package org.limbspan.limb;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Fits one sector's pixels: sky and its slope, ground and its slope, and the place of the limb. The
 * place enters by its linear effect, renewed until it settles; single pixels far off the fit (hot
 * pixels, twigs) lose their weight by Huber's rule. Clipped pixels take no part.
 */
final class SectorFit {

  /** Ground beside the limb changes by about 3 % a pixel, the glow outside by less. */
  private static final double GROUND_SLOPE = 0.03;

  private static final double SKY_SLOPE = 0.004;
  private static final double HUBER = 2.0;

  private final Annulus annulus;
  private final boolean withWidth;
  private final int rounds;
  private final int columns;
  private final double[] residual;
  private double misfit;
  private int count;
  private final double[] column;

  SectorFit(Annulus annulus, boolean withWidth, int rounds) {
    this.rounds = rounds;
    this.annulus = annulus;
    this.withWidth = withWidth;
    columns = withWidth ? 6 : 5;
    column = new double[columns];
    int most = 0;
    for (int s = 0; s < annulus.sectors(); s++) {
      most = Math.max(most, annulus.to(s) - annulus.from(s));
    }
    residual = new double[most];
  }

  /**
   * @param wider the template of an edge wider by {@code widening} px; the same as {@code template}
   *     when the width is not asked for
   */
  Optional<SectorEdge> fit(
      int sector, double start, EdgeTemplate template, EdgeTemplate wider, double widening) {
    int from = annulus.from(sector);
    int to = annulus.to(sector);
    if (to - from < 4 * columns) {
      return Optional.empty();
    }
    double shift = start;
    double scale = 0;
    double contrastGuess = roughContrast(from, to, shift);
    if (contrastGuess <= 0) {
      return Optional.empty();
    }
    double peak = template.peak();
    if (peak < 1e-6) {
      return Optional.empty();
    }
    double[] x = new double[columns];
    RealMatrix covariance = null;
    for (int round = 0; round < rounds; round++) {
      Normal normal = new Normal(columns);
      double amplitude = round == 0 ? contrastGuess / peak : Math.max(x[0], 0.1 * contrastGuess / peak);
      int used = 0;
      for (int i = from; i < to; i++) {
        double light = annulus.light(i);
        if (light == Float.POSITIVE_INFINITY) {
          continue;
        }
        fill(annulus.depth(i) + shift, amplitude, template, wider, widening);
        double weight = 1;
        if (scale > 0) {
          double off = Math.abs(residual[i - from]);
          weight = off <= HUBER * scale ? 1 : HUBER * scale / off;
          if (off > 8 * scale) {
            weight = 0;
          }
        }
        normal.add(column, light, weight);
        used++;
      }
      if (used < 3 * columns) {
        return Optional.empty();
      }
      double noise = scale > 0 ? scale : 0.05 * contrastGuess;
      normal.prior(1, Math.pow(noise / (GROUND_SLOPE * amplitude), 2));
      normal.prior(3, Math.pow(noise / (SKY_SLOPE * amplitude * peak), 2));
      normal.prior(4, Math.pow(noise / (amplitude * annulus.window()), 2));
      if (withWidth) {
        normal.prior(5, Math.pow(noise / (amplitude * 3), 2));
      }
      try {
        CholeskyDecomposition cholesky =
            new CholeskyDecomposition(normal.matrix(), 1e-9, 1e-14);
        x = cholesky.getSolver().solve(MatrixUtils.createRealVector(normal.right)).toArray();
        covariance = cholesky.getSolver().getInverse();
      } catch (MathRuntimeException e) {
        return Optional.empty();
      }
      double move = x[4] / amplitude;
      scale = Math.max(scatter(from, to, shift, amplitude, x, template, wider, widening), 1e-6);
      double step = Math.max(-1.5, Math.min(1.5, move));
      shift += step;
      if (Math.abs(shift) > annulus.window() * 0.8) {
        return Optional.empty();
      }
      if (round >= 3 && Math.abs(step) < 2e-3) {
        break;
      }
    }
    if (covariance == null || x[0] <= 0) {
      return Optional.empty();
    }
    double contrast = x[0] * peak;
    double uncertainty = scale * Math.sqrt(covariance.getEntry(4, 4)) / x[0];
    double width = withWidth ? x[5] / x[0] : 0;
    return Optional.of(
        new SectorEdge(
            annulus.angle(sector),
            shift,
            uncertainty,
            contrast,
            scale,
            misfit,
            count,
            width,
            clippedShare(from, to),
            clippedShare(from, to) > 0 ? Math.min(1, (1 - x[2]) / contrast) : 1));
  }

  private void fill(
      double depth, double amplitude, EdgeTemplate template, EdgeTemplate wider, double widening) {
    column[0] = template.level(depth);
    column[1] = template.growing(depth);
    column[2] = 1;
    column[3] = Math.min(0, depth);
    column[4] = template.slope(depth);
    if (withWidth) {
      column[5] = (wider.level(depth) - column[0]) / widening;
    }
  }

  /** Stores the residuals and returns 1.4826 times their median size. */
  private double scatter(
      int from, int to, double shift, double amplitude, double[] x,
      EdgeTemplate template, EdgeTemplate wider, double widening) {
    double[] sizes = new double[to - from];
    count = 0;
    for (int i = from; i < to; i++) {
      double light = annulus.light(i);
      if (light == Float.POSITIVE_INFINITY) {
        continue;
      }
      fill(annulus.depth(i) + shift, amplitude, template, wider, widening);
      double model = 0;
      for (int k = 0; k < columns; k++) {
        model += x[k] * column[k];
      }
      residual[i - from] = light - model;
      sizes[count++] = Math.abs(light - model);
    }
    Arrays.sort(sizes, 0, count);
    double median = 1.4826 * sizes[count / 2];
    misfit = 0;
    for (int i = 0; i < count; i++) {
      misfit += Math.pow(Math.min(sizes[i], 4 * median), 2);
    }
    return Math.max(median, 0.6 * sizes[(int) (0.8 * count)] );
  }

  private double roughContrast(int from, int to, double shift) {
    double inside = 0;
    double outside = 0;
    int insideCount = 0;
    int outsideCount = 0;
    for (int i = from; i < to; i++) {
      double light = Math.min(1, annulus.light(i));
      double depth = annulus.depth(i) + shift;
      if (depth > 0.25 * annulus.window()) {
        inside += light;
        insideCount++;
      } else if (depth < -0.25 * annulus.window()) {
        outside += light;
        outsideCount++;
      }
    }
    return insideCount == 0 || outsideCount == 0
        ? 0
        : inside / insideCount - outside / outsideCount;
  }

  private double clippedShare(int from, int to) {
    int inside = 0;
    int clipped = 0;
    for (int i = from; i < to; i++) {
      if (annulus.depth(i) > 0) {
        inside++;
        clipped += annulus.light(i) == Float.POSITIVE_INFINITY ? 1 : 0;
      }
    }
    return inside == 0 ? 0 : clipped / (double) inside;
  }

  /** Normal equations being summed. */
  private static final class Normal {

    private final double[][] left;
    private final double[] right;

    Normal(int columns) {
      left = new double[columns][columns];
      right = new double[columns];
    }

    void add(double[] column, double value, double weight) {
      for (int j = 0; j < column.length; j++) {
        double w = weight * column[j];
        right[j] += w * value;
        for (int k = 0; k <= j; k++) {
          left[j][k] += w * column[k];
        }
      }
    }

    void prior(int index, double weight) {
      left[index][index] += weight;
    }

    RealMatrix matrix() {
      for (int j = 0; j < left.length; j++) {
        for (int k = j + 1; k < left.length; k++) {
          left[j][k] = left[k][j];
        }
      }
      return MatrixUtils.createRealMatrix(left);
    }
  }
}
