package org.limbspan.limb.render;

/** Separable Gaussian blur of a plane, truncated at four standard deviations. */
final class Blur {

  private Blur() {}

  static float[] gaussian(float[] plane, int width, int height, double sigma) {
    int reach = (int) Math.ceil(4 * sigma);
    float[] kernel = new float[2 * reach + 1];
    double total = 0;
    for (int i = -reach; i <= reach; i++) {
      total += Math.exp(-0.5 * i * i / (sigma * sigma));
    }
    for (int i = -reach; i <= reach; i++) {
      kernel[i + reach] = (float) (Math.exp(-0.5 * i * i / (sigma * sigma)) / total);
    }
    return transpose(
        rows(transpose(rows(plane, width, height, kernel), width, height), height, width, kernel),
        height,
        width);
  }

  /** Three running means of {@code 2 half + 1} pixels each way: nearly a wide Gaussian. */
  static float[] wide(float[] plane, int width, int height, int half) {
    float[] out = plane;
    for (int pass = 0; pass < 3; pass++) {
      out = transpose(runningMean(out, width, height, half), width, height);
      out = transpose(runningMean(out, height, width, half), height, width);
    }
    return out;
  }

  private static float[] runningMean(float[] plane, int width, int height, int half) {
    float[] out = new float[plane.length];
    for (int y = 0; y < height; y++) {
      int row = y * width;
      double sum = 0;
      for (int k = -half; k <= half; k++) {
        sum += plane[row + clamp(k, width)];
      }
      for (int x = 0; x < width; x++) {
        out[row + x] = (float) (sum / (2 * half + 1));
        sum += plane[row + clamp(x + half + 1, width)] - plane[row + clamp(x - half, width)];
      }
    }
    return out;
  }

  /** Mean over a straight trail centred on each pixel. */
  static float[] trail(float[] plane, int width, int height, double length, double angleDeg) {
    int steps = Math.max(1, (int) Math.ceil(length));
    double dx = Math.cos(Math.toRadians(angleDeg));
    double dy = -Math.sin(Math.toRadians(angleDeg));
    float[] out = new float[plane.length];
    for (int k = 0; k < steps; k++) {
      double t = ((k + 0.5) / steps - 0.5) * length;
      addShifted(out, plane, width, height, t * dx, t * dy, 1f / steps);
    }
    return out;
  }

  private static void addShifted(
      float[] out, float[] plane, int width, int height, double dx, double dy, float weight) {
    int ix = (int) Math.floor(dx);
    int iy = (int) Math.floor(dy);
    float fx = (float) (dx - ix);
    float fy = (float) (dy - iy);
    for (int y = 0; y < height; y++) {
      int y0 = clamp(y + iy, height) * width;
      int y1 = clamp(y + iy + 1, height) * width;
      for (int x = 0; x < width; x++) {
        int x0 = clamp(x + ix, width);
        int x1 = clamp(x + ix + 1, width);
        float top = plane[y0 + x0] * (1 - fx) + plane[y0 + x1] * fx;
        float low = plane[y1 + x0] * (1 - fx) + plane[y1 + x1] * fx;
        out[y * width + x] += weight * (top * (1 - fy) + low * fy);
      }
    }
  }

  private static float[] rows(float[] plane, int width, int height, float[] kernel) {
    int reach = kernel.length / 2;
    float[] out = new float[plane.length];
    float[] padded = new float[width + 2 * reach];
    for (int y = 0; y < height; y++) {
      System.arraycopy(plane, y * width, padded, reach, width);
      java.util.Arrays.fill(padded, 0, reach, plane[y * width]);
      java.util.Arrays.fill(padded, reach + width, padded.length, plane[y * width + width - 1]);
      for (int x = 0; x < width; x++) {
        float sum = 0;
        for (int k = 0; k < kernel.length; k++) {
          sum += kernel[k] * padded[x + k];
        }
        out[y * width + x] = sum;
      }
    }
    return out;
  }

  private static float[] transpose(float[] plane, int width, int height) {
    float[] out = new float[plane.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        out[x * height + y] = plane[y * width + x];
      }
    }
    return out;
  }

  private static int clamp(int i, int size) {
    return Math.max(0, Math.min(size - 1, i));
  }
}
