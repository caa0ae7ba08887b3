package org.limbspan.rig;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.util.List;
import org.limbspan.intake.CsvBody;
import org.limbspan.intake.JsonBody;
import org.limbspan.platform.Problem;
import org.limbspan.testing.fuzz.ParserTarget;

/** What is sent as rigs and calibrations. */
public final class RigTargets {

  private static final Instant NOW = Instant.parse("2026-06-01T00:00:00Z");

  private static final String RIG =
      """
      {"slug": "back-wall", "name": "Back wall (invented)", "latitudeDeg": 52.1, "longitudeDeg": 5.3,
       "elevationM": 12, "timeZone": "Europe/Amsterdam", "note": "600 mm"}""";

  private static final String TARGET =
      """
      {"takenAt": "2026-03-01T15:00:00+01:00", "method": "target", "targetLengthMm": 297,
       "targetLengthUncertaintyMm": 0.3, "targetDistanceM": 50, "targetDistanceUncertaintyM": 0.03,
       "measuredPx": 1080, "measuredUncertaintyPx": 1}""";

  private static final String STARS =
      """
      {"takenAt": "2026-03-01T15:00:00Z", "method": "star-pair", "separationArcmin": 30.5,
       "separationUncertaintyArcmin": 0, "measuredMm": 108.5, "measuredUncertaintyMm": 0.5}""";

  private static final String SHEETS =
      "taken_at,target_length_mm,target_length_uncertainty_mm,target_distance_m,"
          + "target_distance_uncertainty_m,measured_px,measured_uncertainty_px\n"
          + "2026-03-01T15:00:00Z,297,0.3,50,0.03,1080,1\n";

  private RigTargets() {}

  public static List<ParserTarget> all() {
    return List.of(
        new ParserTarget(
            "a rig as JSON",
            8,
            List.of(RIG.getBytes(UTF_8)),
            List.of("slug", "latitudeDeg", "Europe/", "Z", "-90.0000001"),
            input -> RigEntry.read(JsonBody.single(new ByteArrayInputStream(input))),
            List.of(Problem.class)),
        new ParserTarget(
            "calibrations as JSON",
            8,
            List.of(
                TARGET.getBytes(UTF_8),
                STARS.getBytes(UTF_8),
                ("[" + TARGET + "," + STARS + "]").getBytes(UTF_8)),
            List.of("method", "target", "star-pair", "measuredPx", "measuredMm"),
            input ->
                new JsonBody(new ByteArrayInputStream(input))
                    .forEach(new CalibrationEntry(NOW, OnConflict.REFUSE)::read),
            List.of(Problem.class)),
        new ParserTarget(
            "calibrations as CSV",
            8,
            List.of(SHEETS.getBytes(UTF_8), SHEETS.replace(',', ';').getBytes(UTF_8)),
            List.of("measured_mm", "method", "star-pair"),
            input ->
                new CsvBody(
                        new ByteArrayInputStream(input), UTF_8, CalibrationEntry.REQUIRED_COLUMNS)
                    .forEach(new CalibrationEntry(NOW, OnConflict.REFUSE)::read),
            List.of(Problem.class)));
  }
}
