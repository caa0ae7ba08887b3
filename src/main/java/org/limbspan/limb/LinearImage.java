package org.limbspan.limb;

import java.util.BitSet;

/**
 * A decoded photograph in linear light: one brightness a pixel, 0 to 1, and a mark where any
 * channel was at the end of its scale. Pixel centres have whole coordinates, (0, 0) at the top
 * left, y down.
 *
 * <p>Memory: 4 bytes and 1 bit a pixel, 50 MB for 12 megapixels. Nothing else of the measurement
 * grows with the image.
 */
public final class LinearImage {

  private final int width;
  private final int height;
  private final float[] light;
  private final BitSet clipped;

  private LinearImage(int width, int height, float[] light, BitSet clipped) {
    this.width = width;
    this.height = height;
    this.light = light;
    this.clipped = clipped;
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** Brightness at a pixel inside the image, 0 to 1. */
  float light(int x, int y) {
    return light[y * width + x];
  }

  boolean clipped(int x, int y) {
    return clipped.get(y * width + x);
  }

  boolean holds(double x, double y) {
    return x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1;
  }

  /**
   * Takes an image row by row, so that the decoder need not hold a second copy.
   *
   * @param bits bits of a sample, 1 to 16
   */
  public static Builder builder(int width, int height, int bits, ToneCurve curve) {
    return new Builder(width, height, bits, curve);
  }

  /** Collects rows of samples. */
  public static final class Builder {

    /**
     * Weights of red, green and blue: the luminance of IEC 61966-2-1, so that a JPEG's finest
     * channel counts most and the coarser colour ones little.
     */
    private static final float[] WEIGHTS = {0.2126f, 0.7152f, 0.0722f};

    /** A channel within 2 % of its top may have been clipped before compression blurred it. */
    private static final double TOP = 0.98;

    private final int width;
    private final int height;
    private final float[] table;
    private final int top;
    private final float[] light;
    private final BitSet clipped;

    private Builder(int width, int height, int bits, ToneCurve curve) {
      if (width < 1 || height < 1 || (long) width * height > Integer.MAX_VALUE - 8) {
        throw new IllegalArgumentException(
            "image size " + width + " x " + height + ": expected 1 to 2^31 pixels");
      }
      if (bits < 1 || bits > 16) {
        throw new IllegalArgumentException("bits " + bits + ": expected 1 to 16");
      }
      this.width = width;
      this.height = height;
      table = curve.table(bits);
      top = (int) Math.ceil(TOP * (table.length - 1));
      light = new float[width * height];
      clipped = new BitSet(width * height);
    }

    /**
     * Sets a row.
     *
     * @param samples interleaved codes, the first one or three bands of each pixel being grey or
     *     red, green, blue
     * @param bands samples a pixel: 1 or 2 for grey, 3 or 4 for colour; the last of 2 or 4 is
     *     opacity and ignored
     */
    public Builder row(int y, int[] samples, int bands) {
      if (bands < 1 || bands > 4 || samples.length < (long) width * bands) {
        throw new IllegalArgumentException(
            "row of "
                + samples.length
                + " samples in "
                + bands
                + " bands: expected 1 to 4 bands"
                + " of "
                + width
                + " samples");
      }
      int at = y * width;
      for (int x = 0; x < width; x++, at++) {
        int s = x * bands;
        if (bands < 3) {
          light[at] = table[samples[s]];
          mark(at, samples[s]);
        } else {
          light[at] =
              WEIGHTS[0] * table[samples[s]]
                  + WEIGHTS[1] * table[samples[s + 1]]
                  + WEIGHTS[2] * table[samples[s + 2]];
          mark(at, Math.max(samples[s], Math.max(samples[s + 1], samples[s + 2])));
        }
      }
      return this;
    }

    private void mark(int at, int code) {
      if (code >= top) {
        clipped.set(at);
      }
    }

    public LinearImage build() {
      return new LinearImage(width, height, light, clipped);
    }
  }
}
