package org.limbspan.limb;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.util.FastMath;

/**
 * The limb in every sector by its outermost half level, without any assumption on its width: good
 * to a fraction of the width, wherever the edge lies in the window.
 */
final class FirstLook {

  private static final double LEAST_CONTRAST_SHARE = 0.12;
  private static final double LEAST_SIGNAL_TO_NOISE = 4;
  private static final int BINS = 49;

  private final Annulus annulus;
  private final double binWidth;

  FirstLook(Annulus annulus) {
    this.annulus = annulus;
    binWidth = 2 * annulus.window() / BINS;
  }

  /**
   * A sector's edge.
   *
   * @param shift outwards from the assumed outline, pixels
   * @param sigma width of the edge as the standard deviation of a Gaussian, pixels
   */
  record Edge(int sector, double shift, double sigma, double contrast, double signalToNoise) {}

  List<Edge> edges() {
    List<Edge> all = new ArrayList<>();
    for (int s = 0; s < annulus.sectors(); s++) {
      if (!annulus.outside(s)) {
        edge(s, all);
      }
    }
    double[] contrasts = all.stream().mapToDouble(Edge::contrast).sorted().toArray();
    if (contrasts.length == 0) {
      return all;
    }
    double least = LEAST_CONTRAST_SHARE * contrasts[(int) (0.9 * (contrasts.length - 1))];
    all.removeIf(e -> e.contrast() < least || e.signalToNoise() < LEAST_SIGNAL_TO_NOISE);
    return all;
  }

  private void edge(int sector, List<Edge> found) {
    double[] profile = profile(sector);
    double[] outer = Arrays.copyOfRange(profile, 0, BINS / 4);
    double[] inner = Arrays.copyOfRange(profile, BINS / 2, BINS);
    double noise = scatter(outer);
    Arrays.sort(outer);
    Arrays.sort(inner);
    double sky = outer[outer.length / 2];
    double ground = inner[(int) (0.8 * inner.length)];
    double contrast = ground - sky;
    if (!(contrast > 0)) {
      return;
    }
    double half = crossing(profile, sky + 0.5 * contrast);
    double quarter = crossing(profile, sky + 0.25 * contrast);
    double three = crossing(profile, sky + 0.75 * contrast);
    if (Double.isNaN(half) || Double.isNaN(quarter) || Double.isNaN(three)) {
      return;
    }
    double sigma = (three - quarter) / 1.349;
    found.add(new Edge(sector, -half, sigma, contrast, contrast / FastMath.max(noise, 1e-6)));
  }

  /** Mean light in steps of depth, from outside to inside; empty steps take their neighbour's. */
  private double[] profile(int sector) {
    double[] sum = new double[BINS];
    int[] count = new int[BINS];
    for (int i = annulus.from(sector); i < annulus.to(sector); i++) {
      int bin = (int) ((annulus.pixels().depth(i) + annulus.window()) / binWidth);
      if (bin >= 0 && bin < BINS) {
        sum[bin] += Math.min(1, annulus.pixels().light(i));
        count[bin]++;
      }
    }
    double last = 0;
    for (int b = 0; b < BINS; b++) {
      last = count[b] > 0 ? sum[b] / count[b] : last;
      sum[b] = last;
    }
    double[] smooth = sum.clone();
    for (int b = 1; b < BINS - 1; b++) {
      smooth[b] = (sum[b - 1] + 2 * sum[b] + sum[b + 1]) / 4;
    }
    return smooth;
  }

  /** Depth of the outermost place that stays above a level for two steps, NaN if none. */
  private double crossing(double[] profile, double level) {
    for (int b = 1; b < BINS - 1; b++) {
      if (profile[b] >= level && profile[b + 1] >= level) {
        double rise = profile[b] - profile[b - 1];
        double part = rise > 0 ? (level - profile[b - 1]) / rise : 1;
        return (b - 0.5 + Math.max(0, Math.min(1, part))) * binWidth - annulus.window();
      }
    }
    return Double.NaN;
  }

  private static double scatter(double[] values) {
    double[] steps = new double[values.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = Math.abs(values[i + 1] - values[i]);
    }
    Arrays.sort(steps);
    return 1.4826 * steps[steps.length / 2];
  }
}
