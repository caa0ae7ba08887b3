package org.limbspan.drift;

import org.limbspan.cycle.Observation;
import org.limbspan.sky.MoonSight;

/**
 * How well a computed Moon fits what the observer sighted. Altitudes by eye are taken as good to 2
 * degrees, azimuths to 3 (common practice, no source); one in twenty is plainly wrong.
 */
final class Sighting {

  private static final double ALTITUDE_DEG = 2;
  private static final double AZIMUTH_DEG = 3;
  private static final double WRONG_SHARE = 0.05;

  /** Below this apparent altitude of its centre nothing of the disc is to be seen. */
  private static final double HORIZON_DEG = -0.6;

  private static final double LOG_BELOW_HORIZON = Math.log(0.001);

  private Sighting() {}

  /** ln of the likelihood of what was sighted, up to a constant that is the same for all sights. */
  static double logLikelihood(Observation reading, MoonSight sight) {
    double log = belowHorizon(sight) ? LOG_BELOW_HORIZON : 0;
    if (reading.sighted().altitudeDeg().isPresent()) {
      double off = reading.sighted().altitudeDeg().getAsDouble() - sight.apparentAltitudeDeg();
      log += log(off, ALTITUDE_DEG, 90);
    }
    if (reading.sighted().azimuthDeg().isPresent()) {
      double off = reading.sighted().azimuthDeg().getAsDouble() - sight.azimuthDeg();
      double across =
          Math.IEEEremainder(off, 360) * Math.cos(Math.toRadians(sight.apparentAltitudeDeg()));
      log += log(across, AZIMUTH_DEG, 180);
    }
    return log;
  }

  static boolean belowHorizon(MoonSight sight) {
    return sight.apparentAltitudeDeg() < HORIZON_DEG;
  }

  private static double log(double offDeg, double deviationDeg, double rangeDeg) {
    double z = offDeg / deviationDeg;
    double usual = Noise.normalDensity(z * z, deviationDeg * deviationDeg);
    return Math.log((1 - WRONG_SHARE) * usual + WRONG_SHARE / rangeDeg);
  }
}
