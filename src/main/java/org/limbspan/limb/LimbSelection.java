package org.limbspan.limb;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * Keeps the sectors that show the sunlit limb: enough contrast, a clean edge, and a place that
 * agrees with a common outline. The terminator, a roof and branches lie inside it, so that a sector
 * inside is set aside sooner than one outside.
 */
final class LimbSelection {

  private static final int ROUNDS = 12;

  /**
   * White over the limb's light: where a fit makes the clipped limb brighter, too little of the
   * edge was left to tell it, and its place.
   */
  private static final double LEAST_WHITE_OVER_LIMB = 0.2;

  private LimbSelection() {}

  /** Those with enough of the light that most of the limb has, and a clean edge. */
  static List<SectorEdge> plausible(List<SectorEdge> all) {
    List<SectorEdge> edges =
        all.stream().filter(e -> e.clipLevel() > LEAST_WHITE_OVER_LIMB).toList();
    if (edges.isEmpty()) {
      return edges;
    }
    double[] contrasts = edges.stream().mapToDouble(SectorEdge::contrast).sorted().toArray();
    double strong = contrasts[(int) (0.9 * (contrasts.length - 1))];
    double[] noises = edges.stream().mapToDouble(SectorEdge::scatter).sorted().toArray();
    double noise = noises[noises.length / 2];
    List<SectorEdge> kept = new ArrayList<>();
    for (SectorEdge e : edges) {
      if (e.contrast() > 0.12 * strong
          && e.signalToNoise() > 3.5
          && e.scatter() < 4 * noise + 0.06 * strong
          && e.shiftUncertainty() < 1.5) {
        kept.add(e);
      }
    }
    return kept;
  }

  /** Those that agree with one outline near the assumed one. */
  static List<SectorEdge> agreeing(List<SectorEdge> edges, Outline outline) {
    if (edges.size() < 12) {
      return List.of();
    }
    double[][] design = new double[edges.size()][];
    double[] shifts = new double[edges.size()];
    for (int i = 0; i < design.length; i++) {
      design[i] = Arrays.copyOf(outline.outwardMotion(edges.get(i).angle()), 4);
      shifts[i] = edges.get(i).shift();
    }
    double[] weights = new double[edges.size()];
    Arrays.fill(weights, 1);
    double[] residuals = shifts;
    double scale = 0;
    for (int round = 0; round < ROUNDS; round++) {
      residuals = residuals(design, shifts, weights);
      scale = scale(residuals, edges);
      double tight = round < 6 ? 1.5 : 3;
      for (int i = 0; i < weights.length; i++) {
        double unit = residuals[i] / (tight * scale);
        double inner = residuals[i] < 0 ? 1.3 : 1;
        weights[i] = 1 / Math.pow(1 + inner * inner * unit * unit, 2);
      }
    }
    List<SectorEdge> kept = new ArrayList<>();
    for (int i = 0; i < residuals.length; i++) {
      double unit = residuals[i] / scale;
      if (unit < 5 && unit > -4.2) {
        kept.add(edges.get(i));
      }
    }
    return kept;
  }

  private static double[] residuals(double[][] design, double[] shifts, double[] weights) {
    int n = shifts.length;
    double[][] left = new double[n + 1][4];
    double[] right = new double[n + 1];
    double total = 0;
    for (int i = 0; i < n; i++) {
      double w = Math.sqrt(weights[i]);
      total += weights[i];
      for (int k = 0; k < 4; k++) {
        left[i][k] = w * design[i][k];
      }
      right[i] = w * shifts[i];
    }
    double hold = 1e-3 * Math.sqrt(0.02 * total);
    left[n][2] = hold;
    left[n][3] = -hold;
    RealVector fit =
        new SingularValueDecomposition(MatrixUtils.createRealMatrix(left))
            .getSolver()
            .solve(MatrixUtils.createRealVector(right));
    double[] residuals = new double[n];
    for (int i = 0; i < n; i++) {
      double model = 0;
      for (int k = 0; k < 4; k++) {
        model += design[i][k] * fit.getEntry(k);
      }
      residuals[i] = shifts[i] - model;
    }
    return residuals;
  }

  private static double scale(double[] residuals, List<SectorEdge> edges) {
    double[] sizes = new double[residuals.length];
    double[] stated = new double[residuals.length];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(residuals[i]);
      stated[i] = edges.get(i).shiftUncertainty();
    }
    Arrays.sort(sizes);
    Arrays.sort(stated);
    return Math.max(0.04, Math.max(stated[stated.length / 2], 1.4826 * sizes[sizes.length / 2]));
  }
}
