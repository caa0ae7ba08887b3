package org.limbspan.sky;

/**
 * How bright the Sun leaves the sky: day while its upper limb is up at sea level, then the three
 * twilights, by the altitude of its centre without refraction.
 *
 * <p>Source: the definitions of the Explanatory Supplement to the Astronomical Almanac (3rd ed.
 * 2013), ch. 12: -0&deg;50', -6, -12 and -18 degrees. From memory.
 */
public enum SkyLight {
  DAY(-50.0 / 60),
  CIVIL_TWILIGHT(-6),
  NAUTICAL_TWILIGHT(-12),
  ASTRONOMICAL_TWILIGHT(-18),
  NIGHT(-90);

  private final double leastSunAltitudeDeg;

  SkyLight(double leastSunAltitudeDeg) {
    this.leastSunAltitudeDeg = leastSunAltitudeDeg;
  }

  /**
   * The light under a Sun at that altitude; a Sun just on a limit belongs to the brighter side.
   *
   * @throws IllegalArgumentException if {@code sunAltitudeDeg} is not within -90 to 90
   */
  public static SkyLight of(double sunAltitudeDeg) {
    if (!(sunAltitudeDeg >= -90 && sunAltitudeDeg <= 90)) {
      throw new IllegalArgumentException(
          "sunAltitudeDeg " + sunAltitudeDeg + ": expected -90 to 90");
    }
    for (SkyLight light : values()) {
      if (sunAltitudeDeg >= light.leastSunAltitudeDeg) {
        return light;
      }
    }
    return NIGHT;
  }

  /** Altitude of the Sun's centre, without refraction, from which on it is this light. */
  public double leastSunAltitudeDeg() {
    return leastSunAltitudeDeg;
  }

  /** Whether the Moon outshines the sky: nautical twilight or darker (common practice). */
  public boolean isDark() {
    return this != DAY && this != CIVIL_TWILIGHT;
  }
}
