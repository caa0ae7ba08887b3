package org.limbspan.rig;

import java.time.Instant;
import java.util.Locale;
import org.limbspan.sky.Apsis;

/** A perigee or apogee as clients see it. */
record ApsisView(String kind, Instant at, double distanceKm) {

  static ApsisView of(Apsis apsis) {
    return new ApsisView(
        apsis.kind().name().toLowerCase(Locale.ROOT), apsis.at(), apsis.distanceKm());
  }
}
