package org.limbspan.rig;

import java.time.Instant;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** The computed sky in the form in which answers carry it. */
@Component
public class Predictions {

  private final Sky sky;
  private final PerigeeCalendar perigees;

  Predictions(Sky sky) {
    this.sky = sky;
    this.perigees = new PerigeeCalendar(sky);
  }

  /** What is computed for an instant within the ephemeris. */
  public Predicted at(Instant at, Site site, Axis axis) {
    return of(sky.moonAt(at, site), axis);
  }

  /** What a computed sight says along an axis. */
  public Predicted of(MoonSight sight, Axis axis) {
    return new Predicted(
        sight.geocentricDistanceKm(),
        sight.topocentricDistanceKm(),
        sight.diameterArcmin(axis),
        sight.altitudeDeg(),
        sight.apparentAltitudeDeg(),
        sight.azimuthDeg(),
        sight.illuminatedFraction(),
        sight.sunSeparationDeg(),
        perigees.daysFromPerigee(sight.at()));
  }
}
