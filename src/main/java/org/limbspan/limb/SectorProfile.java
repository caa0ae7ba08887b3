package org.limbspan.limb;

import java.util.Arrays;

/**
 * One sector's light against depth, its pixels averaged in steps of about half a pixel. Pixels far
 * from the others of their step (hot ones) are left out, clipped ones counted apart.
 */
final class SectorProfile {

  private static final double OUTLIER = 7;

  private final double[] depth;
  private final double[] light;
  private final double[] weight;
  private final int size;
  private final int pixels;
  private final double clippedShare;

  SectorProfile(Annulus annulus, int sector, int steps) {
    depth = new double[steps];
    light = new double[steps];
    weight = new double[steps];
    int from = annulus.from(sector);
    int to = annulus.to(sector);
    double perPixel = steps / (2 * annulus.window());
    int[] first = new int[steps + 1];
    for (int i = from; i < to; i++) {
      first[step(annulus.depth(i), annulus.window(), perPixel, steps) + 1]++;
    }
    for (int b = 0; b < steps; b++) {
      first[b + 1] += first[b];
    }
    int[] order = new int[to - from];
    int[] next = Arrays.copyOf(first, steps);
    int inside = 0;
    int clipped = 0;
    for (int i = from; i < to; i++) {
      order[next[step(annulus.depth(i), annulus.window(), perPixel, steps)]++] = i;
      if (annulus.depth(i) > 0) {
        inside++;
        clipped += annulus.light(i) == Float.POSITIVE_INFINITY ? 1 : 0;
      }
    }
    clippedShare = inside == 0 ? 0 : clipped / (double) inside;
    double spread = spread(annulus, order, first);
    int used = 0;
    int kept = 0;
    for (int b = 0; b < steps; b++) {
      kept += average(annulus, order, first[b], first[b + 1], spread, used);
      if (weight[used] > 0) {
        used++;
      }
    }
    size = used;
    pixels = kept;
  }

  private static int step(double depth, double window, double perPixel, int steps) {
    return Math.max(0, Math.min(steps - 1, (int) ((depth + window) * perPixel)));
  }

  /** Typical distance of a pixel from the median of its step. */
  private static double spread(Annulus annulus, int[] order, int[] first) {
    double[] sizes = new double[order.length];
    int count = 0;
    for (int b = 0; b + 1 < first.length; b++) {
      double middle = median(annulus, order, first[b], first[b + 1]);
      for (int i = first[b]; i < first[b + 1]; i++) {
        float value = annulus.light(order[i]);
        if (value != Float.POSITIVE_INFINITY) {
          sizes[count++] = Math.abs(value - middle);
        }
      }
    }
    if (count == 0) {
      return 0;
    }
    Arrays.sort(sizes, 0, count);
    return Math.max(1e-4, sizes[(int) (0.8 * (count - 1))]);
  }

  private int average(Annulus annulus, int[] order, int from, int to, double spread, int into) {
    double middle = median(annulus, order, from, to);
    double sumDepth = 0;
    double sumLight = 0;
    int count = 0;
    for (int i = from; i < to; i++) {
      float value = annulus.light(order[i]);
      if (value != Float.POSITIVE_INFINITY && Math.abs(value - middle) <= OUTLIER * spread) {
        sumDepth += annulus.depth(order[i]);
        sumLight += value;
        count++;
      }
    }
    weight[into] = count;
    if (count > 0) {
      depth[into] = sumDepth / count;
      light[into] = sumLight / count;
    }
    return count;
  }

  private static double median(Annulus annulus, int[] order, int from, int to) {
    if (to == from) {
      return 0;
    }
    float[] values = new float[to - from];
    for (int i = from; i < to; i++) {
      values[i - from] = annulus.light(order[i]);
    }
    Arrays.sort(values);
    return Math.min(1, values[values.length / 2]);
  }

  int size() {
    return size;
  }

  /** Mean depth of a step, pixels. */
  double depth(int i) {
    return depth[i];
  }

  double light(int i) {
    return light[i];
  }

  /** Number of pixels in a step. */
  double weight(int i) {
    return weight[i];
  }

  int pixels() {
    return pixels;
  }

  double clippedShare() {
    return clippedShare;
  }

  /** Light of the inner quarter over that of the outer quarter. */
  double contrast(double window, double shift) {
    double inside = 0;
    double outside = 0;
    double insideWeight = 0;
    double outsideWeight = 0;
    for (int i = 0; i < size; i++) {
      double d = depth[i] + shift;
      if (d > 0.25 * window) {
        inside += weight[i] * light[i];
        insideWeight += weight[i];
      } else if (d < -0.25 * window) {
        outside += weight[i] * light[i];
        outsideWeight += weight[i];
      }
    }
    if (outsideWeight == 0) {
      return 0;
    }
    double sky = outside / outsideWeight;
    return (insideWeight == 0 ? 1 : Math.max(inside / insideWeight, clippedShare)) - sky;
  }
}
