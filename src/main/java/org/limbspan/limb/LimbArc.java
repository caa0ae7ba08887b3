package org.limbspan.limb;

/**
 * A stretch of the outline, counter-clockwise.
 *
 * @param fromDeg angle on the disc from the horizon's right, degrees, 0 to 360
 * @param toDeg above {@code fromDeg}, up to 720
 */
public record LimbArc(double fromDeg, double toDeg) {

  public LimbArc {
    if (!(fromDeg >= 0 && fromDeg < 360 && toDeg > fromDeg && toDeg <= fromDeg + 360.001)) {
      throw new IllegalArgumentException("arc " + fromDeg + " to " + toDeg + " degrees");
    }
  }

  public double lengthDeg() {
    return toDeg - fromDeg;
  }
}
