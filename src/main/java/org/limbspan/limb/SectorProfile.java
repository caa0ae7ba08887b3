package org.limbspan.limb;

import java.util.Arrays;

/**
 * Light against depth inside an edge, its pixels averaged in steps of about half a pixel. Pixels
 * far from the others of their step (hot ones) are left out, clipped ones counted apart.
 */
final class SectorProfile {

  private static final double OUTLIER = 7;

  /** Where more of a step is clipped, the rest of it is the darker part, and no fair sample. */
  private static final double MOST_CLIPPED = 0.04;

  private final double[] depth;
  private final double[] light;
  private final double[] weight;
  private final int size;
  private final int pixels;
  private final double clippedShare;

  SectorProfile(EdgePixels pixels, int from, int to, double window, int steps) {
    depth = new double[steps];
    light = new double[steps];
    weight = new double[steps];
    double perPixel = steps / (2 * window);
    int[] first = new int[steps + 1];
    for (int i = from; i < to; i++) {
      first[step(pixels.depth(i), window, perPixel, steps) + 1]++;
    }
    for (int b = 0; b < steps; b++) {
      first[b + 1] += first[b];
    }
    int[] order = new int[to - from];
    int[] next = Arrays.copyOf(first, steps);
    int inside = 0;
    int clipped = 0;
    for (int i = from; i < to; i++) {
      order[next[step(pixels.depth(i), window, perPixel, steps)]++] = i;
      if (pixels.depth(i) > 0) {
        inside++;
        clipped += pixels.light(i) == Float.POSITIVE_INFINITY ? 1 : 0;
      }
    }
    clippedShare = inside == 0 ? 0 : clipped / (double) inside;
    double spread = spread(pixels, order, first);
    int used = 0;
    int kept = 0;
    for (int b = 0; b < steps; b++) {
      kept += average(pixels, order, first[b], first[b + 1], spread, used);
      if (weight[used] > 0) {
        used++;
      }
    }
    size = used;
    this.pixels = kept;
  }

  private static int step(double depth, double window, double perPixel, int steps) {
    return Math.max(0, Math.min(steps - 1, (int) ((depth + window) * perPixel)));
  }

  /** Typical distance of a pixel from the median of its step. */
  private static double spread(EdgePixels pixels, int[] order, int[] first) {
    double[] sizes = new double[order.length];
    int count = 0;
    for (int b = 0; b + 1 < first.length; b++) {
      double middle = median(pixels, order, first[b], first[b + 1]);
      for (int i = first[b]; i < first[b + 1]; i++) {
        float value = pixels.light(order[i]);
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

  private int average(EdgePixels pixels, int[] order, int from, int to, double spread, int into) {
    double middle = median(pixels, order, from, to);
    double sumDepth = 0;
    double sumLight = 0;
    int count = 0;
    int clipped = 0;
    for (int i = from; i < to; i++) {
      clipped += pixels.light(order[i]) == Float.POSITIVE_INFINITY ? 1 : 0;
    }
    if (clipped > MOST_CLIPPED * (to - from)) {
      weight[into] = 0;
      return 0;
    }
    for (int i = from; i < to; i++) {
      float value = pixels.light(order[i]);
      if (value != Float.POSITIVE_INFINITY && Math.abs(value - middle) <= OUTLIER * spread) {
        sumDepth += pixels.depth(order[i]);
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

  private static double median(EdgePixels pixels, int[] order, int from, int to) {
    if (to == from) {
      return 0;
    }
    float[] values = new float[to - from];
    for (int i = from; i < to; i++) {
      values[i - from] = pixels.light(order[i]);
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
