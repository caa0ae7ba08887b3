package org.limbspan.limb;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Fits one sector's profile: sky and its slope, ground, its slope and its texture, and the place of
 * the limb. The place enters by its linear effect, renewed until it settles; steps far off the fit
 * (twigs, a planet) lose weight by Huber's rule. Clipped pixels take no part.
 */
final class SectorFit {

  /** Usual relative change of the ground's brightness over the window, of either kind. */
  private static final double GROUND_CHANGE = 0.25;

  private static final double SKY_SLOPE = 0.004;

  /** By how much ground may outshine what was recorded of it: clipped light is lost. */
  private static final double MOST_BRIGHTER = 3;

  private static final double HUBER = 2.0;
  private static final int LEAST_STEPS = 6;

  private static final int LEVEL = 0;
  private static final int GROWTH = 1;
  private static final int SKY = 2;
  private static final int GLOW = 3;
  private static final int PLACE = 4;
  private static final int TURN = 5;
  private static final int WIDTH = 6;

  private final SectorProfile profile;
  private final double angle;
  private final double window;
  private final EdgeTemplate template;
  private final EdgeTemplate wider;
  private final double widening;
  private final int columns;
  private final int patchesFrom;
  private final GroundTexture ground;
  private final double[] column;
  private final double[] residual;
  private double[] x;
  private double shift;
  private double scale;
  private double misfit;
  private double placeVariance;

  /**
   * @param wider the template of an edge wider by {@code widening} px of standard deviation, or the
   *     same as {@code template} when the width is not asked for
   */
  SectorFit(
      SectorProfile profile,
      double angle,
      double window,
      EdgeTemplate template,
      EdgeTemplate wider,
      double widening,
      GroundTexture ground) {
    this.profile = profile;
    this.angle = angle;
    this.window = window;
    this.template = template;
    this.wider = wider;
    this.widening = widening;
    this.ground = ground;
    patchesFrom = wider == template ? WIDTH : WIDTH + 1;
    columns = patchesFrom + ground.patches();
    column = new double[columns];
    residual = new double[profile.size()];
    x = new double[columns];
  }

  /** The limb's place, looked for from a start, or empty when the sector shows none. */
  Optional<SectorEdge> from(double start, int rounds) {
    shift = start;
    double contrast = profile.contrast(window, start);
    double peak = template.peak();
    if (contrast <= 0 || peak < 1e-6 || profile.size() < patchesFrom + LEAST_STEPS) {
      return Optional.empty();
    }
    x[LEVEL] = contrast / peak;
    scale = 0;
    try {
      for (int round = 0; round < rounds; round++) {
        double seen = contrast / peak;
        double amplitude = Math.max(0.1 * seen, Math.min(MOST_BRIGHTER * seen, x[LEVEL]));
        double step = round(amplitude, contrast, peak);
        if (Math.abs(shift) > 0.8 * window) {
          return Optional.empty();
        }
        if (round >= 3 && Math.abs(step) < 2e-3) {
          break;
        }
      }
    } catch (MathRuntimeException e) {
      return Optional.empty();
    }
    return x[LEVEL] > 0 ? Optional.of(edge(peak)) : Optional.empty();
  }

  private double round(double amplitude, double contrast, double peak) {
    double[][] left = new double[columns][columns];
    double[] right = new double[columns];
    for (int i = 0; i < profile.size(); i++) {
      fill(profile.depth(i) + shift);
      add(left, right, profile.light(i), profile.weight(i) * trust(i));
    }
    double noise = scale > 0 ? scale : 0.05 * contrast;
    addPrior(left, GROWTH, noise * window / (GROUND_CHANGE * amplitude));
    addPrior(left, TURN, noise * template.turnAt(window) / (GROUND_CHANGE * amplitude));
    addPrior(left, GLOW, noise / (SKY_SLOPE * amplitude * peak));
    addPrior(left, PLACE, noise / (amplitude * window));
    if (patchesFrom > WIDTH) {
      addPrior(left, WIDTH, noise / (amplitude * 3));
    }
    addTexture(left, noise / amplitude);
    mirror(left);
    RealMatrix normal = MatrixUtils.createRealMatrix(left);
    CholeskyDecomposition cholesky = new CholeskyDecomposition(normal, 1e-9, 1e-14);
    x = cholesky.getSolver().solve(MatrixUtils.createRealVector(right)).toArray();
    double[] unit = new double[columns];
    unit[PLACE] = 1;
    placeVariance = cholesky.getSolver().solve(MatrixUtils.createRealVector(unit)).getEntry(PLACE);
    measureScatter();
    double step = Math.max(-1.5, Math.min(1.5, x[PLACE] / amplitude));
    shift += step;
    return step;
  }

  private double trust(int i) {
    if (scale == 0) {
      return 1;
    }
    double off = Math.abs(residual[i]) * Math.sqrt(profile.weight(i)) / scale;
    return off <= HUBER ? 1 : off > 8 ? 0.02 : HUBER / off;
  }

  private void add(double[][] left, double[] right, double light, double weight) {
    for (int j = 0; j < columns; j++) {
      double w = weight * column[j];
      right[j] += w * light;
      for (int k = 0; k <= j; k++) {
        left[j][k] += w * column[k];
      }
    }
  }

  /**
   * The upper half from the lower one: summed apart they differ by rounding, which a decomposition
   * that asks for symmetry takes for another matrix where the ground beside the limb is dark.
   */
  private static void mirror(double[][] left) {
    for (int j = 0; j < left.length; j++) {
      for (int k = 0; k < j; k++) {
        left[k][j] = left[j][k];
      }
    }
  }

  private static void addPrior(double[][] left, int index, double weight) {
    left[index][index] += weight * weight;
  }

  private void addTexture(double[][] left, double noiseShare) {
    for (int p = 0; p < ground.patches(); p++) {
      for (int q = 0; q <= p; q++) {
        left[patchesFrom + p][patchesFrom + q] += noiseShare * noiseShare * ground.precision(p, q);
      }
    }
  }

  private void fill(double depth) {
    column[LEVEL] = template.level(depth);
    column[GROWTH] = template.growing(depth);
    column[TURN] = template.turning(depth);
    column[SKY] = 1;
    column[GLOW] = Math.min(0, depth);
    column[PLACE] = template.slope(depth);
    if (patchesFrom > WIDTH) {
      column[WIDTH] = (wider.level(depth) - column[LEVEL]) / widening;
    }
    for (int p = 0; p < ground.patches(); p++) {
      column[patchesFrom + p] = template.patch(p, depth);
    }
  }

  /** Residuals, and their scatter brought to one pixel. */
  private void measureScatter() {
    double[] sizes = new double[profile.size()];
    for (int i = 0; i < profile.size(); i++) {
      fill(profile.depth(i) + shift);
      double model = 0;
      for (int k = 0; k < columns; k++) {
        model += x[k] * column[k];
      }
      residual[i] = profile.light(i) - model;
      sizes[i] = Math.abs(residual[i]) * Math.sqrt(profile.weight(i));
    }
    Arrays.sort(sizes);
    double free = profile.size() / (double) Math.max(1, profile.size() - patchesFrom);
    double median = 1.4826 * sizes[sizes.length / 2];
    scale = Math.sqrt(free) * Math.max(1e-6, Math.max(median, 0.78 * sizes[sizes.length * 8 / 10]));
    misfit = 0;
    for (double size : sizes) {
      misfit += Math.pow(Math.min(size, 4 * scale), 2);
    }
  }

  private double meanPatch() {
    if (ground.patches() == 0) {
      return 0;
    }
    double sum = 0;
    for (int p = 0; p < ground.patches(); p++) {
      sum += x[patchesFrom + p] / ground.patches();
    }
    return sum;
  }

  private SectorEdge edge(double peak) {
    double contrast = (x[LEVEL] + meanPatch()) * peak;
    double clipped = profile.clippedShare();
    return new SectorEdge(
        angle,
        shift,
        scale * Math.sqrt(placeVariance) / x[LEVEL],
        contrast,
        scale,
        misfit,
        profile.size(),
        patchesFrom > WIDTH ? x[WIDTH] / x[LEVEL] : 0,
        clipped,
        clipped > 0 ? Math.min(1, (1 - x[SKY]) / contrast) : 1);
  }
}
