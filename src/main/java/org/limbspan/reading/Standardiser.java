package org.limbspan.reading;

import java.time.Instant;
import java.util.Optional;
import java.util.function.BiFunction;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Setup;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.PlateScale;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;

/** Turns a rig's readings into angles beside the computed Moon. */
final class Standardiser {

  private final InstrumentHistory history;
  private final BiFunction<Instant, Site, MoonSight> moonAt;

  /**
   * @param moonAt where the Moon stands at an instant over a site
   */
  Standardiser(InstrumentHistory history, BiFunction<Instant, Site, MoonSight> moonAt) {
    this.history = history;
    this.moonAt = moonAt;
  }

  MoonSight sight(RecordedReading reading) {
    return moonAt.apply(reading.takenAt(), history.rig().site());
  }

  Setup setup(RecordedReading reading) {
    return history.setupAt(reading.takenAt());
  }

  /** Empty for a length in a setup without calibration. */
  Optional<StandardisedReading> standardise(RecordedReading reading, MoonSight sight) {
    Diameter diameter = reading.diameter();
    Setup setup = setup(reading);
    Optional<LengthUnit> length = diameter.unit().length();
    if (length.isEmpty()) {
      return Optional.of(standardised(reading, setup, diameter.value(), 0, sight));
    }
    return scale(setup, length.get())
        .map(
            scale ->
                standardised(
                    reading,
                    setup,
                    scale.arcmin(diameter.value()),
                    scale.relativeUncertainty(),
                    sight));
  }

  /** The same; the sight is computed only where there is an angle. */
  Optional<StandardisedReading> standardise(RecordedReading reading) {
    return isAngle(reading) ? standardise(reading, sight(reading)) : Optional.empty();
  }

  private boolean isAngle(RecordedReading reading) {
    return reading
        .diameter()
        .unit()
        .length()
        .map(unit -> scale(setup(reading), unit).isPresent())
        .orElse(true);
  }

  private Optional<PlateScale> scale(Setup setup, LengthUnit unit) {
    return history.scaleOf(setup).map(mean -> mean.scale()).filter(scale -> scale.unit() == unit);
  }

  private static StandardisedReading standardised(
      RecordedReading reading,
      Setup setup,
      double diameterArcmin,
      double scaleRelativeUncertainty,
      MoonSight sight) {
    return new StandardisedReading(
        reading,
        setup.number(),
        diameterArcmin,
        reading.diameter().relativeUncertainty(),
        scaleRelativeUncertainty,
        sight);
  }
}
