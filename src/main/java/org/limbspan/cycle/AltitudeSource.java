package org.limbspan.cycle;

/** Where an estimate that needs altitudes takes them from. */
public enum AltitudeSource {
  /** Computed for the instant and the site: directions of an ephemeris, none of its distances. */
  COMPUTED {
    @Override
    boolean isKnown(Observation o) {
      return true;
    }

    @Override
    double altitudeDeg(Observation o) {
      return o.sight().altitudeDeg();
    }
  },
  /** Sighted by the observer, refraction taken off; readings without one are left out. */
  SIGHTED {
    @Override
    boolean isKnown(Observation o) {
      return o.sighted().altitudeDeg().isPresent();
    }

    @Override
    double altitudeDeg(Observation o) {
      double refractionDeg = o.sight().apparentAltitudeDeg() - o.sight().altitudeDeg();
      return o.sighted().altitudeDeg().orElseThrow() - refractionDeg;
    }
  };

  abstract boolean isKnown(Observation o);

  /** Altitude of the Moon's centre without refraction, degrees. */
  abstract double altitudeDeg(Observation o);
}
