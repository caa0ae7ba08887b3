package org.limbspan.reading;

import org.limbspan.sky.MoonSight;

/**
 * A reading in arcminutes beside the computed Moon.
 *
 * @param reading as entered
 * @param setup number of its setup in the rig's history, from 0
 * @param diameterArcmin diameter as an angle
 * @param relativeUncertainty standard uncertainty of the reading alone over its diameter
 * @param scaleRelativeUncertainty the same of the plate scale, which all readings of the setup
 *     share; 0 for a reading that was entered in arcminutes
 * @param sight the computed Moon at its instant and site
 */
public record StandardisedReading(
    RecordedReading reading,
    int setup,
    double diameterArcmin,
    double relativeUncertainty,
    double scaleRelativeUncertainty,
    MoonSight sight) {

  /** The computed diameter along the reading's own axis, in arcminutes. */
  public double predictedArcmin() {
    return sight.diameterArcmin(reading.axis());
  }

  /** ln(observed / predicted) in percent. */
  public double residualPercent() {
    return 100 * Math.log(diameterArcmin / predictedArcmin());
  }

  /** Standard uncertainty of the residual, of reading and scale together, in percent. */
  public double residualUncertaintyPercent() {
    return 100 * Math.hypot(relativeUncertainty, scaleRelativeUncertainty);
  }

  /** Standard uncertainty of the diameter, of reading and scale together, in arcminutes. */
  public double uncertaintyArcmin() {
    return diameterArcmin * Math.hypot(relativeUncertainty, scaleRelativeUncertainty);
  }
}
