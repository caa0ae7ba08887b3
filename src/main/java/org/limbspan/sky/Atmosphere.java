package org.limbspan.sky;

/**
 * The air at a site, as refraction needs it.
 *
 * @param pressureHPa pressure at the site (not reduced to sea level), 0 to 1100; 0 is no air
 * @param temperatureC temperature, -90 to 60
 */
public record Atmosphere(double pressureHPa, double temperatureC) {

  public Atmosphere {
    if (!(pressureHPa >= 0 && pressureHPa <= 1100)) {
      throw new IllegalArgumentException("pressureHPa " + pressureHPa + ": expected 0 to 1100");
    }
    if (!(temperatureC >= -90 && temperatureC <= 60)) {
      throw new IllegalArgumentException("temperatureC " + temperatureC + ": expected -90 to 60");
    }
  }

  /**
   * The mean atmosphere at a height: the 1010 hPa and 10 degrees C for which refraction tables are
   * drawn, thinned by the barometric law of the International Standard Atmosphere (ISO 2533:1975).
   *
   * @param elevationM height above sea level in metres
   */
  public static Atmosphere meanAt(double elevationM) {
    double pressureHPa = 1010 * Math.pow(1 - 2.25577e-5 * elevationM, 5.25588);
    return new Atmosphere(Math.min(1100, pressureHPa), 10);
  }
}
