package org.limbspan.limb;

/**
 * How a sample's code stands for light. The measurement works in linear light: at half the encoded
 * level of a limb the light is at a fifth, which would shift the edge outwards by about a third of
 * its width.
 *
 * <p>Source: IEC 61966-2-1 (sRGB). A camera's own contrast curve on top of it is not known to the
 * file; its effect is carried in the model part of the uncertainty.
 */
public enum ToneCurve {
  /** Encoded by the sRGB curve, as JPEG and most 8-bit files are. */
  SRGB {
    @Override
    double lightOf(double code) {
      return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }
  },
  /** Proportional to light, as files developed from raw without a curve are. */
  LINEAR {
    @Override
    double lightOf(double code) {
      return code;
    }
  };

  /**
   * Light for a code.
   *
   * @param code 0 to 1
   * @return 0 to 1
   */
  abstract double lightOf(double code);

  /** The light of every code of that many bits. */
  float[] table(int bits) {
    int most = (1 << bits) - 1;
    float[] table = new float[most + 1];
    for (int code = 0; code <= most; code++) {
      table[code] = (float) lightOf(code / (double) most);
    }
    return table;
  }
}
