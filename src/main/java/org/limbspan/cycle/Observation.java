package org.limbspan.cycle;

import java.time.Instant;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;

/**
 * One reading beside what the computed sky says of its instant.
 *
 * @param takenAt instant of the reading
 * @param axis direction along which the diameter was measured
 * @param observedArcmin standardised diameter in arcminutes, greater than 0
 * @param relativeUncertainty standard uncertainty of the reading alone over its diameter, as stated
 *     by the observer: without the part of the plate scale, which all readings of a setup share;
 *     greater than 0
 * @param sight the computed Moon at that instant and site
 * @param setup number of the setup in the rig's history, from 0
 * @param sighted altitude and azimuth as the observer sighted them
 */
public record Observation(
    Instant takenAt,
    Axis axis,
    double observedArcmin,
    double relativeUncertainty,
    MoonSight sight,
    int setup,
    Sighted sighted) {

  public Observation {
    if (!(observedArcmin > 0 && observedArcmin < 600)) {
      throw new IllegalArgumentException(
          "observedArcmin " + observedArcmin + ": expected above 0 and below 600");
    }
    if (!(relativeUncertainty > 0 && relativeUncertainty < 1)) {
      throw new IllegalArgumentException(
          "relativeUncertainty " + relativeUncertainty + ": expected above 0 and below 1");
    }
  }

  /** The computed diameter along this reading's axis, in arcminutes. */
  public double predictedArcmin() {
    return sight.diameterArcmin(axis);
  }

  /** ln(observed / predicted), without unit; times 100 it is the residual in percent. */
  public double residual() {
    return Math.log(observedArcmin / predictedArcmin());
  }
}
