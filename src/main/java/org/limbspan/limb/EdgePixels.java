package org.limbspan.limb;

import java.util.Arrays;

/** Pixels near an edge: for each the depth inside it, its light, and the stretch it belongs to. */
final class EdgePixels {

  private int[] stretch;
  private float[] depth;
  private float[] light;
  private int count;

  EdgePixels(int expected) {
    stretch = new int[expected];
    depth = new float[expected];
    light = new float[expected];
  }

  /**
   * @param light positive infinity where clipped
   */
  void add(int stretchIndex, double depthPx, float light) {
    if (count == depth.length) {
      int more = count + count / 2 + 16;
      stretch = Arrays.copyOf(stretch, more);
      depth = Arrays.copyOf(depth, more);
      this.light = Arrays.copyOf(this.light, more);
    }
    stretch[count] = stretchIndex;
    depth[count] = (float) depthPx;
    this.light[count++] = light;
  }

  /**
   * Sorts the pixels by stretch.
   *
   * @return where each stretch begins, and at the end the number of pixels
   */
  int[] sort(int stretches) {
    int[] first = new int[stretches + 1];
    for (int i = 0; i < count; i++) {
      first[stretch[i] + 1]++;
    }
    for (int s = 0; s < stretches; s++) {
      first[s + 1] += first[s];
    }
    float[] sortedDepth = new float[count];
    float[] sortedLight = new float[count];
    int[] next = Arrays.copyOf(first, stretches);
    for (int i = 0; i < count; i++) {
      int at = next[stretch[i]]++;
      sortedDepth[at] = depth[i];
      sortedLight[at] = light[i];
    }
    depth = sortedDepth;
    light = sortedLight;
    return first;
  }

  /** Depth inside the edge, pixels; negative outside. */
  float depth(int i) {
    return depth[i];
  }

  /** Light, or positive infinity where clipped. */
  float light(int i) {
    return light[i];
  }
}
