package org.limbspan.limb;

import java.util.Arrays;

/**
 * The photograph reduced by whole blocks, with single bright pixels smoothed away: for searching.
 */
final class Thumbnail {

  private static final int LONGEST = 640;

  private final int factor;
  private final int width;
  private final int height;
  private final float[] light;

  Thumbnail(LinearImage image) {
    factor = Math.max(1, (Math.max(image.width(), image.height()) + LONGEST - 1) / LONGEST);
    width = Math.max(1, image.width() / factor);
    height = Math.max(1, image.height() / factor);
    light = median(blockMeans(image));
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  int factor() {
    return factor;
  }

  float at(int x, int y) {
    return light[y * width + x];
  }

  /** Place in the photograph, pixels, of a place in the thumbnail. */
  double full(double place) {
    return place * factor + (factor - 1) / 2.0;
  }

  private float[] blockMeans(LinearImage image) {
    float[] means = new float[width * height];
    float share = 1f / (factor * factor);
    for (int y = 0; y < height * factor; y++) {
      int row = y / factor * width;
      for (int x = 0; x < width; x++) {
        float sum = 0;
        for (int k = 0; k < factor; k++) {
          sum += image.light(x * factor + k, y);
        }
        means[row + x] += sum * share;
      }
    }
    return means;
  }

  /** Median of five (a cross), which keeps edges and drops single pixels. */
  private float[] median(float[] plane) {
    float[] out = plane.clone();
    float[] five = new float[5];
    for (int y = 1; y < height - 1; y++) {
      for (int x = 1; x < width - 1; x++) {
        int at = y * width + x;
        five[0] = plane[at];
        five[1] = plane[at - 1];
        five[2] = plane[at + 1];
        five[3] = plane[at - width];
        five[4] = plane[at + width];
        Arrays.sort(five);
        out[at] = five[2];
      }
    }
    return out;
  }
}
