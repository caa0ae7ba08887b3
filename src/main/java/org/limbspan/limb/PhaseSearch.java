package org.limbspan.limb;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * Where the Sun stands over a nearly full disc, when the terminator hides beside the limb.
 *
 * <p>Each sector is fitted under a ladder of heights of the Sun over the limb. A height that is
 * right shows in two ways: the softness of the edge is explained, and the places of the limb fall
 * on one outline. The direction and size of the Sun's component in the plane of the sky that do
 * both best are searched on a polar grid.
 */
final class PhaseSearch implements Terminator {

  private static final double[] SUN = {
    -0.40, -0.34, -0.29, -0.245, -0.205, -0.17, -0.14, -0.115, -0.09, -0.07, -0.05, -0.03, 0, 0.04,
    0.1, 0.2, 0.4
  };

  /** Uneven ground mimics softness: a misfit counts this much less than noise alone would. */
  private static final double GROUND_INFLATION = 8;

  private static final double PLACE_SPREAD_PX = 0.12;
  private static final int NEIGHBOURS = 6;
  private static final int DIRECTIONS = 36;

  /** Below this gain (chi square) over a full disc there is no terminator: seeing has as much. */
  private static final double LEAST_GAIN = 45;

  /**
   * From this gain on it is believed. Uneven ground on rendered full Moons reached 71, a terminator
   * at 99.7 % had 200 and more; between them half of the strip is taken, and half of it doubted.
   */
  private static final double SURE_GAIN = 80;

  /**
   * The computed Sun is believed while its lack stays below so many times the best one's and so
   * much more. Beside settled outlines of rendered photographs the true Sun had up to 1.4 times the
   * best one's lack and 40 more, but for three in 240 of them; at 99.5 % lit the opposite one and
   * one from the side had 1.8 times and more.
   */
  private static final double CONTRADICTING_FACTOR = 1.5;

  private static final double CONTRADICTING_LACK = 150;

  /** Error of a sector's place for uneven ground, as a share of the strip. */
  private static final double ROUGHNESS = 0.3;

  /** A sector with less than this share of the limb's usual light lies in shadow. */
  private static final double DARK = 0.3;

  /** From so much of the window on a strip leaves nothing of the limb to be fitted. */
  private static final double WIDE_STRIP = 0.5;

  private static final double MOST_MISFIT = 60;

  /** Sectors with more than this share clipped say nothing on the softness of their edge. */
  private static final double MOST_CLIPPED = 0.1;

  private final Annulus annulus;
  private final EdgeShape shape;
  private final PhasePrior prior;
  private final int stride;
  private final double[] angle;
  private final double[][] shift;
  private final double[][] excess;
  private final double[][] design;
  private final double[] contrast;
  private int count;
  private double bestX;
  private double bestY;
  private double gain;
  private boolean expected;

  PhaseSearch(Annulus annulus, EdgeShape shape, PhasePrior prior) {
    this.prior = prior;
    this.annulus = annulus;
    this.shape = shape;
    stride = Math.max(1, annulus.sectors() / 180);
    int most = annulus.sectors() / stride + 1;
    angle = new double[most];
    shift = new double[most][];
    excess = new double[most][];
    design = new double[most][];
    contrast = new double[most];
    fill();
    allowForShadow();
    search();
  }

  Illumination illumination() {
    return Illumination.gibbous(bestX, bestY);
  }

  @Override
  public double doubt() {
    if (expected) {
      return prior.stripDoubt(bestX, bestY);
    }
    return isSure() ? Math.max(0.2, Math.min(1, 4 / Math.sqrt(gain))) : 0.5;
  }

  @Override
  public double turnDoubtRad() {
    return expected ? prior.turnDoubtRad() : TURN_DOUBT_RAD;
  }

  @Override
  public boolean isExpected() {
    return expected;
  }

  @Override
  public double excess() {
    return expected || isSure() ? 0 : 0.5;
  }

  private boolean isSure() {
    return gain >= SURE_GAIN;
  }

  @Override
  public double hidden(double angleRad) {
    return strip(bestX * Math.cos(angleRad) + bestY * Math.sin(angleRad));
  }

  @Override
  public double hiddenByTurn(double angleRad) {
    double sun = bestX * Math.cos(angleRad) + bestY * Math.sin(angleRad);
    double across = -bestY * Math.cos(angleRad) + bestX * Math.sin(angleRad);
    return (strip(sun + 0.01 * across) - strip(sun - 0.01 * across)) / 0.02;
  }

  @Override
  public double roughness(double angleRad) {
    return ROUGHNESS * hidden(angleRad);
  }

  /** Half of the brightness behind the terminator is reached where cos e is 1.5 times the sine. */
  private double strip(double sunOverLimb) {
    double m = Math.min(0.6, Math.max(0, -1.5 * sunOverLimb));
    return annulus.outline().meanRadius() * (1 - Math.sqrt(1 - m * m));
  }

  private void fill() {
    EdgeTemplate[] ladder = new EdgeTemplate[SUN.length];
    double radius = annulus.outline().meanRadius();
    for (int j = 0; j < SUN.length; j++) {
      Illumination light = Illumination.gibbous(SUN[j], 0);
      ladder[j] = new EdgeTemplate(shape, light, SUN[j], radius, 2 * annulus.window(), 0);
    }
    for (int s = 0; s < annulus.sectors(); s += stride) {
      if (!annulus.outside(s)) {
        climb(s, ladder);
      }
    }
  }

  /**
   * Where the Sun stands so low that no edge is left to fit, a dark sector is just what is expected
   * and no misfit.
   */
  private void allowForShadow() {
    double[] sorted = Arrays.copyOf(contrast, count);
    Arrays.sort(sorted);
    for (int i = 0; i < count; i++) {
      if (contrast[i] > DARK * sorted[count * 3 / 4]) {
        continue;
      }
      for (int j = 0; j < SUN.length; j++) {
        boolean hidden = strip(SUN[j]) > WIDE_STRIP * annulus.window();
        if (hidden && excess[i][j] == MOST_MISFIT) {
          excess[i][j] = 0;
        }
      }
    }
  }

  private void climb(int sector, EdgeTemplate[] ladder) {
    double[] shifts = new double[SUN.length];
    double[] misfits = new double[SUN.length];
    double least = Double.MAX_VALUE;
    int pixels = 1;
    for (int j = 0; j < SUN.length; j++) {
      Optional<SectorEdge> edge =
          new SectorFit(
                  annulus.profile(sector),
                  annulus.angle(sector),
                  annulus.window(),
                  ladder[j],
                  ladder[j],
                  1,
                  GroundTexture.NONE)
              .from(strip(SUN[j]) * 0.3, 5);
      if (edge.isEmpty() || edge.get().signalToNoise() < 3) {
        shifts[j] = Double.NaN;
        misfits[j] = Double.MAX_VALUE;
        continue;
      }
      shifts[j] = edge.get().shift();
      misfits[j] = edge.get().misfit();
      if (misfits[j] < least) {
        least = misfits[j];
        pixels = edge.get().pixels();
      }
    }
    if (least == Double.MAX_VALUE) {
      return;
    }
    for (int j = 0; j < SUN.length; j++) {
      double unit = least / Math.max(1, pixels - 5) + 1e-10;
      misfits[j] =
          annulus.profile(sector).clippedShare() > MOST_CLIPPED
              ? 0
              : Math.min(MOST_MISFIT, (misfits[j] - least) / unit / GROUND_INFLATION);
    }
    contrast[count] = annulus.profile(sector).contrast(annulus.window(), 0);
    angle[count] = annulus.angle(sector);
    shift[count] = shifts;
    excess[count] = misfits;
    design[count] = Arrays.copyOf(annulus.outline().outwardMotion(angle[count]), 4);
    count++;
  }

  private void search() {
    if (count < 24) {
      return;
    }
    double full = lack(0, 0);
    double best = full;
    for (double across = 0.02; across <= 0.4; across *= 1.22) {
      for (int d = 0; d < DIRECTIONS; d++) {
        double direction = 2 * Math.PI * d / DIRECTIONS;
        best = better(across * Math.cos(direction), across * Math.sin(direction), best);
      }
    }
    for (double step = 0.02; step > 0.001; step *= 0.6) {
      for (int d = 0; d < 8; d++) {
        double x = bestX + step * Math.cos(d * Math.PI / 4);
        double y = bestY + step * Math.sin(d * Math.PI / 4);
        best = better(x, y, best);
      }
    }
    gain = (full - best) / Math.max(1, best / count);
    if (gain < LEAST_GAIN) {
      bestX = 0;
      bestY = 0;
    }
    if (prior.isKnown()) {
      believe(prior.light(), best);
    }
  }

  /** Takes a direction of the Sun if it explains the sectors better. */
  private double better(double x, double y, double best) {
    double lack = lack(x, y);
    if (lack < best) {
      bestX = x;
      bestY = y;
      return lack;
    }
    return best;
  }

  /** The computed Sun, unless the photograph has another by far. */
  private void believe(Illumination computed, double best) {
    double lack = lack(computed.towardsX(), computed.towardsY());
    expected = lack < CONTRADICTING_FACTOR * best + CONTRADICTING_LACK;
    if (expected) {
      bestX = computed.towardsX();
      bestY = computed.towardsY();
    }
  }

  /** How badly a Sun in that direction explains the sectors. */
  private double lack(double x, double y) {
    double[] places = new double[count];
    double softness = 0;
    int used = 0;
    int[] index = new int[count];
    for (int i = 0; i < count; i++) {
      double sun = x * Math.cos(angle[i]) + y * Math.sin(angle[i]);
      double place = read(shift[i], sun);
      double misfit = read(excess[i], sun);
      softness += Math.min(MOST_MISFIT, misfit);
      if (!Double.isNaN(place) && strip(sun) < 12) {
        places[used] = place;
        index[used++] = i;
      }
    }
    return softness + placeLack(places, index, used);
  }

  private double placeLack(double[] places, int[] index, int used) {
    if (used < 20) {
      return 1e9;
    }
    double[] weights = new double[used];
    Arrays.fill(weights, 1);
    double[] residuals = new double[used];
    for (int round = 0; round < 3; round++) {
      RealMatrix left = MatrixUtils.createRealMatrix(4, 4);
      double[] right = new double[4];
      for (int i = 0; i < used; i++) {
        double[] row = design[index[i]];
        for (int j = 0; j < 4; j++) {
          right[j] += weights[i] * row[j] * places[i];
          for (int k = 0; k < 4; k++) {
            left.addToEntry(j, k, weights[i] * row[j] * row[k]);
          }
        }
      }
      double[] fit =
          new SingularValueDecomposition(left)
              .getSolver()
              .solve(MatrixUtils.createRealVector(right))
              .toArray();
      for (int i = 0; i < used; i++) {
        double[] row = design[index[i]];
        residuals[i] =
            places[i] - row[0] * fit[0] - row[1] * fit[1] - row[2] * fit[2] - row[3] * fit[3];
        double unit = residuals[i] / (4 * PLACE_SPREAD_PX);
        weights[i] = 1 / (1 + unit * unit);
      }
    }
    double sum = 0;
    for (double r : residuals) {
      double unit = r / PLACE_SPREAD_PX;
      sum += 16 * Math.log1p(unit * unit / 16);
    }
    return sum / NEIGHBOURS;
  }

  private static double read(double[] values, double sun) {
    int j = 0;
    while (j < SUN.length - 2 && SUN[j + 1] < sun) {
      j++;
    }
    double f = Math.max(0, Math.min(1, (sun - SUN[j]) / (SUN[j + 1] - SUN[j])));
    if (values[j] == Double.MAX_VALUE || values[j + 1] == Double.MAX_VALUE) {
      return MOST_MISFIT;
    }
    return values[j] + f * (values[j + 1] - values[j]);
  }
}
