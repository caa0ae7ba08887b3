package org.limbspan.limb.render;

/**
 * Differential refraction across the disc by Bennett's formula, R = cot(h + 7.31 / (h + 4.4)) in
 * arcminutes for apparent altitude h in degrees (G. G. Bennett, Journal of Navigation 35, 1982).
 */
final class SkyBend {

  private static final double SEMIDIAMETER_ARCMIN = 15.5;
  private final double altitudeDeg;
  private final double radiusPx;
  private final double trueCentreDeg;

  SkyBend(double altitudeDeg, double radiusPx) {
    this.altitudeDeg = altitudeDeg;
    this.radiusPx = radiusPx;
    this.trueCentreDeg = trueAltitude(altitudeDeg);
  }

  /** Height on the unrefracted disc, in radii, of a point so many pixels above the centre. */
  double discHeight(double abovePx) {
    if (Double.isNaN(altitudeDeg)) {
      return abovePx / radiusPx;
    }
    double apparent = altitudeDeg + abovePx / radiusPx * SEMIDIAMETER_ARCMIN / 60;
    return (trueAltitude(apparent) - trueCentreDeg) * 60 / SEMIDIAMETER_ARCMIN;
  }

  double verticalDiameterPx() {
    return apparentHeight(1) - apparentHeight(-1);
  }

  private double apparentHeight(double discHeight) {
    double low = -1.5 * radiusPx;
    double high = 1.5 * radiusPx;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (discHeight(middle) < discHeight) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private static double trueAltitude(double apparentDeg) {
    double argument = apparentDeg + 7.31 / (apparentDeg + 4.4);
    return apparentDeg - 1 / Math.tan(Math.toRadians(argument)) / 60;
  }
}
