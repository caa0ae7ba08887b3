package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.limbspan.platform.HomeDirectory;
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
  @Autowired private HomeDirectory home;

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

  @Test
  void keepsTheOriginalsOfWhatItEnters() throws Exception {
    RigClient rig = RigClient.described(http, "sheet-originals");
    byte[] file = sheet("2026:05:28 14:00:00");
    send(rig, WITH_OTHER_SIDE + "&dryRun=true", file);
    assertThat(original(file)).doesNotExist();
    send(rig, WITH_OTHER_SIDE, file);
    assertThat(original(file)).hasBinaryContent(file);
    assertThat(incoming()).isEmpty();
  }

  @Test
  void leavesNoOriginalOfWhatIsRefusedAndTakesNoneAway() throws Exception {
    RigClient rig = RigClient.described(http, "sheet-conflicts");
    byte[] first = sheet("2026:05:28 15:00:00");
    byte[] second = sheet("2026:05:28 16:00:00");
    byte[] firstAgain = leaning("2026:05:28 15:00:00");
    byte[] secondAgain = leaning("2026:05:28 16:00:00");
    byte[] fresh = sheet("2026:05:28 17:00:00");
    new PhotoClient(http, rig).postSheets(WITH_OTHER_SIDE, files(first, second));
    Answer refused =
        new PhotoClient(http, rig)
            .postSheets(WITH_OTHER_SIDE, files(first, fresh, firstAgain, secondAgain));
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body().path("violations").size()).isEqualTo(2);
    assertThat(refused.body().path("violations").get(0).path("line").asInt()).isEqualTo(3);
    assertThat(refused.violation("takenAt").path("expected").asString()).contains("supersedes");
    assertThat(rig.get("/calibrations").body().size()).isEqualTo(2);
    assertThat(original(fresh)).doesNotExist();
    assertThat(original(firstAgain)).doesNotExist();
    assertThat(original(secondAgain)).doesNotExist();
    assertThat(original(first)).hasBinaryContent(first);
    assertThat(original(second)).hasBinaryContent(second);
    assertThat(incoming()).isEmpty();
  }

  @Test
  void keepsNoFileThatTheHeldCalibrationDoesNotSpeakOf() throws Exception {
    RigClient rig = RigClient.described(http, "sheet-copied");
    byte[] file = sheet("2026:05:28 18:00:00");
    byte[] longer = Arrays.copyOf(file, file.length + 1);
    send(rig, WITH_OTHER_SIDE, file);
    JsonNode answer = send(rig, WITH_OTHER_SIDE, longer).body().get(0);
    assertThat(answer.path("calibrationOutcome").asString()).isEqualTo("already-held");
    assertThat(original(file)).hasBinaryContent(file);
    assertThat(original(longer)).doesNotExist();
    assertThat(incoming()).isEmpty();
  }

  @Test
  void saysWhenAFileCannotBeKeptAndKeepsItWhenItIsSentAgain() throws Exception {
    RigClient rig = RigClient.described(http, "sheet-blocked");
    byte[] file = sheet("2026:05:28 19:00:00");
    Path shelf = home.path().resolve("photos").resolve(sha256(file).substring(0, 2));
    Path away = home.path().resolve("photos").resolve("away");
    boolean held = Files.exists(shelf);
    if (held) {
      Files.move(shelf, away);
    }
    Files.createDirectories(home.path().resolve("photos"));
    Files.createFile(shelf);
    try {
      Answer answer = send(rig, WITH_OTHER_SIDE, file);
      assertThat(answer.status()).isEqualTo(503);
      assertThat(answer.body().path("detail").asString())
          .contains("are entered", "sheet.jpg", "Send them again");
    } finally {
      Files.delete(shelf);
      if (held) {
        Files.move(away, shelf);
      }
    }
    assertThat(incoming()).isEmpty();
    assertThat(rig.get("/calibrations").body().size()).isEqualTo(1);
    JsonNode again = send(rig, WITH_OTHER_SIDE, file).body().get(0);
    assertThat(again.path("calibrationOutcome").asString()).isEqualTo("already-held");
    assertThat(original(file)).hasBinaryContent(file);
    assertThat(rig.get("/calibrations").body().size()).isEqualTo(1);
  }

  @Test
  void asksForTakenAtAndCountsSetupsFromNoughtAsItsAnswersDo() {
    RigClient rig = RigClient.described(http, "sheet-words");
    byte[] untold = RenderedSheet.jpeg(0, new ExifBlock().focalLengthMm(400));
    JsonNode answer = send(rig, WITH_OTHER_SIDE, untold).body().get(0);
    assertThat(answer.path("refusal").asString()).isEqualTo("no-time");
    assertThat(answer.path("reason").asString()).contains("takenAt").doesNotContain("form");
    assertThat(answer.has("reasonOnPages")).isFalse();
    new PhotoClient(http, rig).send("", "moon.jpg", moon(400));
    JsonNode zoomed = send(rig, WITH_OTHER_SIDE, sheet(0, 300)).body().get(0);
    assertThat(zoomed.path("reason").asString()).contains("photographs of setup 0.");
  }

  /** Where an original lies: by the SHA-256 of its bytes (FIPS 180-4). */
  private Path original(byte[] file) throws Exception {
    String sha256 = sha256(file);
    return home.path().resolve("photos").resolve(sha256.substring(0, 2)).resolve(sha256 + ".jpg");
  }

  private static String sha256(byte[] file) throws Exception {
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
  }

  private List<Path> incoming() throws Exception {
    try (Stream<Path> left = Files.list(home.path().resolve("photos/incoming"))) {
      return left.toList();
    }
  }

  private static Map<String, byte[]> files(byte[]... files) {
    Map<String, byte[]> byName = new LinkedHashMap<>();
    for (byte[] file : files) {
      byName.put("sheet-" + (byName.size() + 1) + ".jpg", file);
    }
    return byName;
  }

  private static byte[] sheet(String local) {
    return RenderedSheet.jpeg(0, told(local, 400));
  }

  private static byte[] leaning(String local) {
    return RenderedSheet.jpeg(6, told(local, 400));
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
