package org.limbspan.limb;

import java.util.Arrays;
import java.util.List;

/** Corrects an outline by the limb's measured shifts, with the covariance of the correction. */
final class LimbAdjustment {

  static final int CENTRE_X = 0;
  static final int CENTRE_Y = 1;
  static final int HORIZONTAL = 2;
  static final int VERTICAL = 3;
  static final int ASYMMETRY = 4;
  static final int ROLL = 5;

  /** Relative excess of the strip that the terminator hides. */
  private static final int STRIP = 6;

  private static final int TURN = 7;
  private static final int PARAMETERS = 8;

  private static final int BINS = 120;

  /** Of a camera that is levelled by eye or by a bubble; common practice, no source. */
  private static final double ROLL_SPREAD_RAD = Math.toRadians(1);

  /**
   * Relief of the limb over its radius: about 0.7 km in 1737 km over some ten degrees, the middle
   * of 0.03 to 0.05 percent; from memory.
   */
  private static final double RELIEF = 0.0004;

  private static final double RELIEF_LENGTH_RAD = Math.toRadians(8.5);

  /**
   * How well the flattening tells the asymmetry: from 0.5 to 40 degrees of altitude {@link
   * #usualAsymmetry} keeps within a sixth, or 0.000003, of Bennett's and Saemundsson's refraction;
   * such bounds have a standard uncertainty of a tenth (JCGM 100:2008, 4.3.7).
   */
  private static final double ASYMMETRY_DOUBT = 0.1;

  private static final double LEAST_ASYMMETRY_DOUBT = 0.00005;

  private final Outline outline;
  private final boolean converging;
  private final LimbCovariance.Solution solution;

  LimbAdjustment(
      List<SectorEdge> edges,
      Outline before,
      Terminator terminator,
      FlatteningPrior prior,
      double modelErrorPx,
      boolean last) {
    Binned bins = new Binned(edges, terminator, modelErrorPx);
    double[][] design = new double[bins.count][PARAMETERS];
    for (int i = 0; i < bins.count; i++) {
      double angle = bins.angle[i];
      System.arraycopy(before.outwardMotion(angle), 0, design[i], 0, 6);
      design[i][STRIP] = -terminator.hidden(angle);
      design[i][TURN] = -terminator.hiddenByTurn(angle);
    }
    double f = Math.max(0, before.flattening());
    double[] mean = new double[PARAMETERS];
    double[] sigma = new double[PARAMETERS];
    Arrays.fill(sigma, Double.POSITIVE_INFINITY);
    mean[ASYMMETRY] = usualAsymmetry(f) - before.asymmetry();
    sigma[ASYMMETRY] = ASYMMETRY_DOUBT * usualAsymmetry(f) + LEAST_ASYMMETRY_DOUBT;
    mean[ROLL] = -before.rollRad();
    sigma[ROLL] = ROLL_SPREAD_RAD;
    mean[STRIP] = -terminator.excess();
    sigma[STRIP] = terminator.doubt();
    mean[TURN] = -terminator.turnRad();
    sigma[TURN] = terminator.turnDoubtRad();
    LimbCovariance problem =
        new LimbCovariance(
            bins.angles(),
            design,
            bins.shifts(),
            bins.variances(),
            new LimbCovariance.Relief(RELIEF * before.meanRadius(), RELIEF_LENGTH_RAD),
            mean,
            sigma);
    double[] gradient = new double[PARAMETERS];
    double a = before.horizontalRadius();
    gradient[HORIZONTAL] = before.verticalRadius() / (a * a);
    gradient[VERTICAL] = -1 / a;
    solution =
        prior.applied(
            last ? problem.solve(bins.scatter()) : problem.roughly(bins.scatter()),
            before.flattening(),
            gradient);
    double[] p = before.toArray();
    for (int k = 0; k < p.length; k++) {
      p[k] += solution.values().getEntry(k);
    }
    converging =
        Arrays.stream(p).allMatch(Double::isFinite) && p[HORIZONTAL] > 0 && p[VERTICAL] > 0;
    outline = converging ? Outline.ofArray(p) : before;
  }

  /** Whether what was found is an outline at all; edges that are none of a disc may give none. */
  boolean isConverging() {
    return converging;
  }

  /** Refraction's own relation of asymmetry to flattening, Bennett's formula across the disc. */
  static double usualAsymmetry(double flattening) {
    return 0.0625 * flattening * flattening / (flattening + 0.012);
  }

  Outline outline() {
    return outline;
  }

  /** Further turn of the Sun's direction, radians counter-clockwise. */
  double turnRad() {
    return solution.values().getEntry(TURN);
  }

  LimbCovariance.Solution solution() {
    return solution;
  }

  /** Neighbouring sectors averaged. */
  private static final class Binned {

    private final double[] angle = new double[BINS];
    private final double[] shift = new double[BINS];
    private final double[] variance = new double[BINS];
    private int count;

    Binned(List<SectorEdge> edges, Terminator terminator, double modelErrorPx) {
      double[] contrasts = edges.stream().mapToDouble(SectorEdge::contrast).sorted().toArray();
      double strong = contrasts[contrasts.length * 3 / 4];
      double[] weight = new double[BINS];
      double[] sum = new double[BINS];
      double[] turn = new double[BINS];
      for (SectorEdge e : edges) {
        int bin = Math.floorMod((int) (e.angle() / (2 * Math.PI) * BINS), BINS);
        double rough = terminator.roughness(e.angle());
        double ground = modelErrorPx * Math.max(0.7, strong / e.contrast());
        double w = 1 / (Math.pow(e.shiftUncertainty(), 2) + ground * ground + rough * rough);
        weight[bin] += w;
        sum[bin] += w * e.shift();
        turn[bin] += w * e.angle();
      }
      for (int b = 0; b < BINS; b++) {
        if (weight[b] > 0) {
          angle[count] = turn[b] / weight[b];
          shift[count] = sum[b] / weight[b];
          variance[count++] = 1 / weight[b];
        }
      }
    }

    double[] angles() {
      return Arrays.copyOf(angle, count);
    }

    double[] shifts() {
      return Arrays.copyOf(shift, count);
    }

    double[] variances() {
      return Arrays.copyOf(variance, count);
    }

    /** From the differences of neighbours and the spread of all, whichever is larger. */
    double scatter() {
      double mean = 0;
      for (int i = 0; i < count; i++) {
        mean += shift[i] / count;
      }
      double sum = 0;
      for (int i = 0; i < count; i++) {
        sum += Math.pow(shift[i] - mean, 2) / count;
      }
      return Math.sqrt(sum);
    }
  }
}
