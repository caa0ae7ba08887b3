package org.limbspan.limb;

import org.hipparchus.special.Erf;

/**
 * How a sharp step looks through seeing, optics and pixels: the edge spread function, a Gaussian
 * core with a share of a Cauchy wing for the glow round a bright disc (or, negative, for
 * sharpening). It is even about the edge, so the half level stays in place whatever its width.
 */
final class EdgeShape {

  /** Full width at half maximum of a Gaussian over its standard deviation. */
  static final double FWHM_OVER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

  private static final double WING_WIDTH = 3.5;
  private static final int PER_SIGMA = 24;

  private final double sigma;
  private final double wing;
  private final double perPixel;
  private final double reach;
  private final float[] table;

  /**
   * @param sigma standard deviation of the core, pixels
   * @param wing share of the light in the wing, -0.5 to 0.5
   * @param reach largest distance asked for, pixels
   */
  EdgeShape(double sigma, double wing, double reach) {
    this.sigma = sigma;
    this.wing = wing;
    this.reach = reach;
    perPixel = PER_SIGMA / sigma;
    int half = (int) Math.ceil(reach * perPixel) + 2;
    table = new float[2 * half + 1];
    for (int i = 0; i < table.length; i++) {
      table[i] = (float) exact((i - half) / perPixel);
    }
  }

  double sigma() {
    return sigma;
  }

  double wing() {
    return wing;
  }

  double fwhm() {
    return sigma * FWHM_OVER_SIGMA;
  }

  double reach() {
    return reach;
  }

  EdgeShape withSigma(double other) {
    return new EdgeShape(other, wing, reach);
  }

  EdgeShape withWing(double other) {
    return new EdgeShape(sigma, other, reach);
  }

  /** Light, 0 to 1, at a depth inside the edge of an even half-plane. */
  double at(double depth) {
    double place = depth * perPixel + (table.length - 1) / 2.0;
    if (place <= 0) {
      return table[0];
    }
    if (place >= table.length - 1) {
      return table[table.length - 1];
    }
    int i = (int) place;
    double f = place - i;
    return table[i] + f * (table[i + 1] - table[i]);
  }

  private double exact(double depth) {
    double core = 0.5 * (1 + Erf.erf(depth / (sigma * Math.sqrt(2))));
    double glow = 0.5 + Math.atan(depth / (WING_WIDTH * sigma)) / Math.PI;
    return (1 - wing) * core + wing * glow;
  }
}
