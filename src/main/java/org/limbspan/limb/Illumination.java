package org.limbspan.limb;

/**
 * Where the Sun stands over the disc, and what brightness the ground has near the limb for it: the
 * Lommel-Seeliger law, cos(i) / (cos(i) + cos(e)), the usual description of the Moon's dark soil
 * (McEwen 1991 gives the Moon's own mixture; near the limb it differs little).
 *
 * @param towardsX component of the direction to the Sun along the horizon, in the plane of the sky
 * @param towardsY the same upwards
 * @param towardsViewer component to the observer: cosine of the phase angle, -1 to 1
 */
record Illumination(double towardsX, double towardsY, double towardsViewer) {

  static final Illumination FULL = new Illumination(0, 0, 1);

  /** From the component in the plane of the sky of a Moon more than half lit. */
  static Illumination gibbous(double towardsX, double towardsY) {
    double across = Math.hypot(towardsX, towardsY);
    double scale = across > 0.999 ? 0.999 / across : 1;
    double x = towardsX * scale;
    double y = towardsY * scale;
    return new Illumination(x, y, Math.sqrt(1 - x * x - y * y));
  }

  static Illumination of(double illuminatedFraction, double directionRad) {
    double cos = Math.max(-1, Math.min(1, 2 * illuminatedFraction - 1));
    double sin = Math.sqrt(1 - cos * cos);
    return new Illumination(sin * Math.cos(directionRad), sin * Math.sin(directionRad), cos);
  }

  double illuminatedFraction() {
    return (1 + towardsViewer) / 2;
  }

  double across() {
    return Math.hypot(towardsX, towardsY);
  }

  /** Sine of the Sun's height over the limb at an angle of the disc; negative on the dark side. */
  double sunOverLimb(double angleRad) {
    return towardsX * Math.cos(angleRad) + towardsY * Math.sin(angleRad);
  }

  /** Sine of the Sun's height over a place of the disc; x right, y up, in radii. */
  double toSun(double x, double y) {
    return towardsX * x + towardsY * y + towardsViewer * Math.sqrt(Math.max(0, 1 - x * x - y * y));
  }

  /**
   * Brightness of even ground below a point of the limb, 1 right at a lit limb.
   *
   * @param sunOverLimb as above
   * @param depth distance from the limb towards the centre, radii
   */
  double brightness(double sunOverLimb, double depth) {
    double rho = Math.max(0, 1 - Math.max(depth, 1e-7));
    double toViewer = Math.sqrt(1 - rho * rho);
    double toSun = sunOverLimb * rho + towardsViewer * toViewer;
    return toSun <= 0 ? 0 : toSun / (toSun + toViewer);
  }
}
