package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/**
 * Photographs of a calibration target become calibrations. The rendered sheet has the sides of ISO
 * 216 A4, 297 mm and 210 mm.
 */
@LimbspanIT
class SheetPhotoIT {

  private static final double TALL_PX = RenderedSheet.TALL_PX;
  private static final String TARGET =
      "?targetLengthMm=297&targetLengthUncertaintyMm=0.2&targetDistanceM=50"
          + "&targetDistanceUncertaintyM=0.02";
  private static final String WITH_OTHER_SIDE = TARGET + "&otherSideMm=210";

  @Autowired private RestTestClient http;

  @Test
  void entersACalibrationWithTheSheetsTallSide() {
    RigClient rig = RigClient.described(http, "sheet-upright");
    JsonNode answer = send(rig, WITH_OTHER_SIDE, sheet(0, 400)).body().get(0);

    double measured = answer.path("measuredPx").asDouble();
    assertThat(answer.path("outcome").asString()).as(answer.toString()).isEqualTo("measured");
    assertThat(measured).isCloseTo(TALL_PX, within(0.001 * TALL_PX));
    assertThat(measured)
        .isCloseTo(TALL_PX, within(3 * answer.path("measuredUncertaintyPx").asDouble()));
    // 2 atan(297 mm / 2 / 50 m) is 1225.20 arcseconds
    assertThat(answer.path("plateScaleArcsecPerPx").asDouble())
        .isCloseTo(1225.20 / measured, within(1e-4));
    assertThat(answer.path("remarks").isEmpty()).as(answer.toString()).isTrue();
    JsonNode held = rig.get("/calibrations").body();
    assertThat(held.size()).isEqualTo(1);
    assertThat(held.get(0).path("measuredPx").asDouble()).isEqualTo(measured);
    assertThat(held.get(0).path("takenAt").asString()).isEqualTo("2026-05-28T10:00:00Z");
    assertThat(held.get(0).path("note").asString()).contains("sheet.jpg", "SHA-256");
  }

  @Test
  void entersTheSamePhotographOnce() {
    RigClient rig = RigClient.described(http, "sheet-twice");
    byte[] file = sheet(0, 400);
    send(rig, WITH_OTHER_SIDE, file);
    JsonNode again = send(rig, WITH_OTHER_SIDE, file).body().get(0);
    assertThat(again.path("calibrationOutcome").asString()).isEqualTo("already-held");
    assertThat(rig.get("/calibrations").body().size()).isEqualTo(1);
  }

  @Test
  void storesNothingWhenOnlyTried() {
    RigClient rig = RigClient.described(http, "sheet-tried");
    JsonNode answer = send(rig, TARGET + "&dryRun=true", sheet(0, 400)).body().get(0);
    assertThat(answer.path("outcome").asString()).isEqualTo("measured");
    assertThat(answer.has("calibrationId")).isFalse();
    assertThat(answer.path("remarks").toString()).contains("otherSideMm");
    assertThat(rig.get("/calibrations").body().size()).isZero();
  }

  /** A lean of 6 degrees shortens by 1 - cos 6, that is 0.548 percent. */
  @Test
  void tellsALeanByTheOtherSideAndEnlargesTheUncertainty() {
    RigClient rig = RigClient.described(http, "sheet-leaning");
    JsonNode answer = send(rig, WITH_OTHER_SIDE + "&dryRun=true", sheet(6, 400)).body().get(0);
    assertThat(answer.path("shorteningPercent").asDouble()).isCloseTo(0.548, within(0.1));
    assertThat(answer.path("remarks").toString()).contains("leaned by");
    assertThat(Math.abs(answer.path("measuredPx").asDouble() - TALL_PX))
        .isLessThan(2 * answer.path("measuredUncertaintyPx").asDouble());
  }

  @Test
  void refusesWhatIsNoSheetSquareToTheCamera() {
    RigClient rig = RigClient.described(http, "sheet-refused");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("fallen.jpg", sheet(14, 400));
    files.put("moon.jpg", moon(400));
    JsonNode answers = new PhotoClient(http, rig).postSheets(WITH_OTHER_SIDE, files).body();
    assertThat(answers.get(0).path("refusal").asString()).isEqualTo("tilted");
    assertThat(answers.get(1).path("refusal").asString()).isIn("no-sheet", "edge-disturbed");
    assertThat(rig.get("/calibrations").body().size()).isZero();
  }

  @Test
  void asksForANewSetupWhenTheFocalLengthIsNotThatOfTheMoons() {
    RigClient rig = RigClient.described(http, "sheet-zoomed");
    new PhotoClient(http, rig).send("", "moon.jpg", moon(400));
    JsonNode answer = send(rig, WITH_OTHER_SIDE, sheet(0, 300)).body().get(0);
    assertThat(answer.path("refusal").asString()).isEqualTo("other-focal-length");
    assertThat(answer.path("question").asString()).contains("new setup");
  }

  @Test
  void standardisesTheReadingsOfPhotographs() {
    RigClient rig = RigClient.described(http, "sheet-and-moon");
    send(rig, WITH_OTHER_SIDE, sheet(0, 400));
    new PhotoClient(http, rig).send("", "moon.jpg", moon(400));
    JsonNode reading = rig.get("/readings").body().path("readings").get(0);
    double scale = rig.get("/calibrations").body().get(0).path("plateScaleArcsecPerPx").asDouble();
    assertThat(reading.path("diameterArcmin").asDouble())
        .isCloseTo(reading.path("diameterPx").asDouble() * scale / 60, within(1e-6));
    assertThat(reading.path("residualPercent").isNumber()).isTrue();
  }

  @Test
  void namesAFieldThatIsMissingOrMakesNoSense() {
    RigClient rig = RigClient.described(http, "sheet-fields");
    byte[] file = sheet(0, 400);
    Answer missing = send(rig, "?targetLengthMm=297", file);
    assertThat(missing.status()).isEqualTo(400);
    assertThat(missing.violation("targetLengthUncertaintyMm").path("expected").asString())
        .contains("a number");
    Answer swapped = send(rig, TARGET + "&otherSideMm=420", file);
    assertThat(swapped.violation("otherSideMm").path("expected").asString()).contains("tall side");
  }

  private Answer send(RigClient rig, String query, byte[] file) {
    return new PhotoClient(http, rig).postSheets(query, Map.of("sheet.jpg", file));
  }

  private static byte[] sheet(double leanDeg, int focalLengthMm) {
    return RenderedSheet.jpeg(leanDeg, told("2026:05:28 12:00:00", focalLengthMm));
  }

  private static byte[] moon(int focalLengthMm) {
    return RenderedMoon.jpeg(
        RenderedMoon.scene(420, 101), told("2026:05:29 21:10:00", focalLengthMm));
  }

  private static ExifBlock told(String local, int focalLengthMm) {
    return new ExifBlock().takenAt(local).offset("+02:00").focalLengthMm(focalLengthMm);
  }
}
