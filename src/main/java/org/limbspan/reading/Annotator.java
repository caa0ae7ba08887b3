package org.limbspan.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.limbspan.rig.Predictions;
import org.limbspan.sky.MoonSight;

/** Sets a reading beside the computed Moon and remarks on what does not fit. */
final class Annotator {

  private final Standardiser standardiser;
  private final Predictions predictions;

  Annotator(Standardiser standardiser, Predictions predictions) {
    this.standardiser = standardiser;
    this.predictions = predictions;
  }

  AnnotatedReading annotate(RecordedReading reading) {
    MoonSight sight = standardiser.sight(reading);
    Optional<StandardisedReading> standardised = standardiser.standardise(reading, sight);
    return new AnnotatedReading(
        reading,
        standardiser.setup(reading).number(),
        predictions.of(sight, reading.axis()),
        standardised,
        remarks(reading, sight, standardised));
  }

  private List<String> remarks(
      RecordedReading reading, MoonSight sight, Optional<StandardisedReading> standardised) {
    List<String> remarks = new ArrayList<>();
    double upperLimbDeg = sight.apparentAltitudeDeg() + sight.horizontalDiameterArcmin() / 120;
    if (upperLimbDeg < 0) {
      remarks.add(
          String.format(
              Locale.ROOT,
              "The Moon was below the horizon of this rig at that instant, its centre at %.1f"
                  + " degrees: check the time, its offset from UTC and the rig's place.",
              sight.altitudeDeg()));
    }
    if (standardised.isEmpty()) {
      remarks.add(
          "Setup "
              + standardiser.setup(reading).number()
              + " has no calibration in "
              + reading.diameter().unit().symbol()
              + ", so this diameter is not an angle yet: add a calibration taken in that setup.");
    }
    return remarks;
  }
}
