package org.limbspan.photo;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.limbspan.limb.MeasureOptions;
import org.limbspan.limb.MeasureOptions.ExpectedFlattening;
import org.limbspan.limb.MeasureOptions.ExpectedPhase;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Refraction;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * What the computed Moon says of a photograph: the phase and the flattening to expect, and what
 * does not fit.
 */
final class ComputedMoon {

  private static final double LEAST_UNCERTAINTY = 1e-4;
  private static final double OTHER_PHASE = 0.15;

  /** Half an hour of the camera's clock: the phase angle grows by 0.5 degrees an hour. */
  private static final double PHASE_UNCERTAINTY_RAD = Math.toRadians(0.25);

  /** The camera's roll. */
  private static final double ROLL_UNCERTAINTY_RAD = Math.toRadians(2);

  private final MoonSight sight;
  private final double brightLimbDeg;

  private ComputedMoon(MoonSight sight, double brightLimbDeg) {
    this.sight = sight;
    this.brightLimbDeg = brightLimbDeg;
  }

  static ComputedMoon of(Sky sky, Instant at, Site site) {
    return new ComputedMoon(sky.moonAt(at, site), sky.brightLimbDeg(at, site));
  }

  MeasureOptions options() {
    MeasureOptions options =
        MeasureOptions.standard()
            .expecting(
                new ExpectedPhase(
                    sight.illuminatedFraction(),
                    PHASE_UNCERTAINTY_RAD,
                    Math.toRadians(brightLimbDeg),
                    ROLL_UNCERTAINTY_RAD));
    double apparentDeg = sight.apparentAltitudeDeg();
    if (apparentDeg < Refraction.FLATTENING_LEAST_DEG) {
      return options;
    }
    double flattening =
        Math.max(0, 1 - sight.verticalDiameterArcmin() / sight.horizontalDiameterArcmin());
    return options.expecting(
        new ExpectedFlattening(
            flattening,
            Math.hypot(LEAST_UNCERTAINTY, Refraction.flatteningDoubt(apparentDeg) * flattening)));
  }

  List<String> remarks(DiscFigures figures) {
    List<String> remarks = new ArrayList<>();
    double upperLimbDeg = sight.apparentAltitudeDeg() + sight.horizontalDiameterArcmin() / 120;
    if (upperLimbDeg < 0) {
      remarks.add(
          String.format(
              Locale.ROOT,
              "The Moon was below the horizon of this rig at that instant, its centre at %.1f"
                  + " degrees: check the camera's clock and the rig's place.",
              sight.altitudeDeg()));
    }
    if (Math.abs(figures.illuminatedFraction() - sight.illuminatedFraction()) > OTHER_PHASE) {
      remarks.add(
          String.format(
              Locale.ROOT,
              "The photograph shows the Moon %.0f percent lit, computed are %.0f percent for that"
                  + " instant: check the date of the camera's clock.",
              100 * figures.illuminatedFraction(),
              100 * sight.illuminatedFraction()));
    }
    return remarks;
  }
}
