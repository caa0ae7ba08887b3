package org.limbspan.limb;

/**
 * The apparent outline of the disc: an ellipse with axes along and across the horizon, its lower
 * half flatter than its upper one.
 *
 * <p>With s the height on the unrefracted disc in radii and u the place along the horizon, {@code
 * s^2 + u^2 = 1}, a point of the outline lies {@code a u} along the horizon and {@code b (s + q
 * s^2)} above the centre. Refraction is a smooth function of altitude; the next term, in s cubed,
 * stays below 0.0002 radii down to the horizon (Bennett's formula evaluated across the disc).
 *
 * @param centreX pixels, of the point where the unrefracted centre appears
 * @param centreY pixels, downwards
 * @param horizontalRadius a, pixels
 * @param verticalRadius b, pixels: half the distance from the top to the bottom
 * @param asymmetry q, positive where the lower half is the flatter one, -0.2 to 0.2
 * @param rollRad turn of the horizon from the image's x axis, clockwise as seen, radians
 */
public record Outline(
    double centreX,
    double centreY,
    double horizontalRadius,
    double verticalRadius,
    double asymmetry,
    double rollRad) {

  public Outline {
    if (!Double.isFinite(centreX) || !Double.isFinite(centreY) || !Double.isFinite(rollRad)) {
      throw new IllegalArgumentException("outline not finite: " + centreX + ", " + centreY);
    }
    if (!(horizontalRadius > 0) || !(verticalRadius > 0)) {
      throw new IllegalArgumentException(
          "radii " + horizontalRadius + ", " + verticalRadius + " px: expected above 0");
    }
    if (!(Math.abs(asymmetry) <= 0.2)) {
      throw new IllegalArgumentException("asymmetry " + asymmetry + ": expected -0.2 to 0.2");
    }
  }

  static Outline circle(double centreX, double centreY, double radius) {
    return new Outline(centreX, centreY, radius, radius, 0, 0);
  }

  public double horizontalDiameterPx() {
    return 2 * horizontalRadius;
  }

  public double verticalDiameterPx() {
    return 2 * verticalRadius;
  }

  /** 1 - vertical / horizontal diameter. */
  public double flattening() {
    return 1 - verticalRadius / horizontalRadius;
  }

  double meanRadius() {
    return (horizontalRadius + verticalRadius) / 2;
  }

  /**
   * The point of the outline at an angle of the unrefracted disc, counter-clockwise from the
   * horizon's right.
   *
   * @return x and y in pixels
   */
  public double[] pointAt(double angleRad) {
    return pointAt(angleRad, 1);
  }

  /** The same on an outline grown by a factor about the centre. */
  double[] pointAt(double angleRad, double factor) {
    double s = Math.sin(angleRad);
    double along = factor * horizontalRadius * Math.cos(angleRad);
    double up = factor * verticalRadius * (s + asymmetry * s * s);
    double cos = Math.cos(rollRad);
    double sin = Math.sin(rollRad);
    return new double[] {centreX + along * cos + up * sin, centreY + along * sin - up * cos};
  }

  /** Where a pixel stands: signed depth inside the outline in pixels, and its angle. */
  Place place(double x, double y) {
    double dx = x - centreX;
    double dy = y - centreY;
    double cos = Math.cos(rollRad);
    double sin = Math.sin(rollRad);
    return placeOf(dx * cos + dy * sin, dx * sin - dy * cos);
  }

  Place placeOf(double along, double up) {
    double u = along / horizontalRadius;
    double v = up / verticalRadius;
    double root = Math.sqrt(Math.max(0.01, 1 + 4 * asymmetry * v));
    double s = 2 * v / (1 + root);
    double rho = Math.sqrt(u * u + s * s);
    if (rho < 1e-9) {
      return new Place(Math.min(horizontalRadius, verticalRadius), 0);
    }
    double slopeAlong = u / horizontalRadius;
    double slopeUp = s / (verticalRadius * root);
    double slope = Math.sqrt(slopeAlong * slopeAlong + slopeUp * slopeUp) / rho;
    return new Place((1 - rho) / slope, Math.atan2(s, u));
  }

  /** Depth inside the outline along its normal, pixels, and angle on the disc, radians. */
  record Place(double depth, double angle) {}

  double[] toArray() {
    return new double[] {centreX, centreY, horizontalRadius, verticalRadius, asymmetry, rollRad};
  }

  static Outline ofArray(double[] p) {
    return new Outline(p[0], p[1], p[2], p[3], Math.max(-0.2, Math.min(0.2, p[4])), p[5]);
  }

  /**
   * How far the outline moves outwards at an angle for a unit change of each parameter, in the
   * order of {@link #toArray()}: the derivative of the point along the outward normal.
   */
  double[] outwardMotion(double angleRad) {
    double u = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    double shape = s + asymmetry * s * s;
    double normalAlong = u / horizontalRadius;
    double normalUp = s / (verticalRadius * (1 + 2 * asymmetry * s));
    double size = Math.sqrt(normalAlong * normalAlong + normalUp * normalUp);
    normalAlong /= size;
    normalUp /= size;
    double along = horizontalRadius * u;
    double up = verticalRadius * shape;
    double cos = Math.cos(rollRad);
    double sin = Math.sin(rollRad);
    return new double[] {
      normalAlong * cos + normalUp * sin,
      normalAlong * sin - normalUp * cos,
      normalAlong * u,
      normalUp * shape,
      normalUp * verticalRadius * s * s,
      normalAlong * up - normalUp * along
    };
  }
}
