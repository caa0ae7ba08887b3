package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PhotoClient;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.photo.RenderedSheet;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.ExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.LinkedMultiValueMap;
import tools.jackson.databind.JsonNode;

/**
 * Photographs of the sheet through the page of the rig, as a browser without scripts sends them.
 */
@LimbspanIT
class SheetPhotoPagesIT {

  /** 2 atan(297 mm / 2 / 50 m) is 1225.20 arcseconds. */
  private static final double TRUE_ARCSEC_PER_PX = 1225.20 / RenderedSheet.TALL_PX;

  private static final byte[] UPRIGHT = sheet(0, "2026:05:28 12:00:00");
  private static final byte[] UNTOLD = RenderedSheet.jpeg(0, new ExifBlock().focalLengthMm(400));
  private static final byte[] MOON =
      RenderedMoon.jpeg(RenderedMoon.scene(420, 101), told("2026:05:29 21:10:00"));

  @Autowired private RestTestClient http;

  @Test
  void offersAFormThatNeedsNoScript() {
    RigClient.described(http, "paper-offer");
    String form = form(page("/rigs/paper-offer/rig"));
    assertThat(form)
        .startsWith("<details class=\"no-print\" id=\"by-photographs\">")
        .contains("action=\"/rigs/paper-offer/calibrations/photos\"")
        .contains("enctype=\"multipart/form-data\"", "type=\"file\"", "multiple=\"multiple\"")
        .contains("id=\"sheetTakenAt\"", "name=\"sheetTakenAt\"", "May be left empty")
        .doesNotContain("complaint", "aria-invalid", "checked");
  }

  @Test
  void entersACalibrationOfTheTrueScale() {
    RigClient rig = RigClient.described(http, "paper-enter");
    String page = text(send(rig, fields(), Map.of("sheet.jpg", UPRIGHT)), HttpStatus.OK);
    assertThat(page)
        .contains("1 photograph: 1 measured, 1 entered, none refused.", "sheet.jpg")
        .contains("Measured and entered in setup 1", "Taken 28 May 2026, 12:00; tall side 2")
        .contains("Plate scale 4.37", "No lean is seen")
        .doesNotContain("only tried");
    JsonNode held = held(rig);
    assertThat(held.size()).isEqualTo(1);
    double scale = held.get(0).path("plateScaleArcsecPerPx").asDouble();
    double uncertainty = held.get(0).path("plateScaleUncertaintyArcsecPerPx").asDouble();
    assertThat(scale).isCloseTo(TRUE_ARCSEC_PER_PX, within(0.001 * TRUE_ARCSEC_PER_PX));
    assertThat(uncertainty).isPositive();
    assertThat(scale).isCloseTo(TRUE_ARCSEC_PER_PX, within(3 * uncertainty));
    assertThat(held.get(0).path("targetDistanceM").asDouble()).isEqualTo(50);
    assertThat(page("/rigs/paper-enter/rig")).contains("From the photograph sheet.jpg");
  }

  @Test
  void storesNothingWhenOnlyTried() {
    RigClient rig = RigClient.described(http, "paper-tried");
    Map<String, String> fields = fields();
    fields.put("dryRun", "true");
    fields.remove("otherSide");
    String page = text(send(rig, fields, Map.of("sheet.jpg", UPRIGHT)), HttpStatus.OK);
    assertThat(page)
        .contains("They were only tried: nothing was entered.", "Measured, not entered")
        .contains("Plate scale 4.37", "Whether the sheet leans was not checked");
    assertThat(held(rig).size()).isZero();
  }

  /** A lean of 6 degrees shortens by 1 - cos 6, that is 0.548 percent. */
  @Test
  void tellsALean() {
    RigClient rig = RigClient.described(http, "paper-lean");
    byte[] leaning = sheet(6, "2026:05:28 12:00:00");
    assertThat(text(send(rig, fields(), Map.of("leaning.jpg", leaning)), HttpStatus.OK))
        .contains("percent too short against the other one", "leaned by")
        .doesNotContain("No lean is seen");
  }

  @Test
  void namesTheFileThatIsRefusedAndEntersTheOther() {
    RigClient rig = RigClient.described(http, "paper-refused");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("fallen.jpg", sheet(14, "2026:05:28 11:00:00"));
    files.put("sheet.jpg", UPRIGHT);
    files.put("moon.jpg", MOON);
    files.put("no-time.jpg", RenderedSheet.jpeg(0, new ExifBlock().focalLengthMm(400)));
    String page = text(send(rig, fields(), files), HttpStatus.OK);
    assertThat(page).contains("4 photographs: 1 measured, 1 entered, 3 refused.");
    assertThat(line(page, "fallen.jpg")).contains("Refused", "leans or is turned");
    assertThat(line(page, "moon.jpg")).contains("Refused", "sheet");
    assertThat(line(page, "no-time.jpg"))
        .contains("Refused", "when it was taken", "“When the sheet was photographed”")
        .doesNotContain("takenAt");
    assertThat(line(page, "sheet.jpg")).contains("Measured and entered");
    assertThat(held(rig).size()).isEqualTo(1);
  }

  @Test
  void saysWhatIsHeldAndWhatWasTakenBack() {
    RigClient rig = RigClient.described(http, "paper-again");
    send(rig, fields(), Map.of("sheet.jpg", UPRIGHT));
    assertThat(text(send(rig, fields(), Map.of("copy.jpg", UPRIGHT)), HttpStatus.OK))
        .contains("1 measured, 1 held already, none refused.")
        .contains("Held already in setup 1, nothing added", "data-outcome=\"held\"");
    long id = held(rig).get(0).path("id").asLong();
    rig.postJson("/calibrations/" + id + "/withdraw", "{\"reason\": \"the tape was bent\"}");
    assertThat(text(send(rig, fields(), Map.of("sheet.jpg", UPRIGHT)), HttpStatus.OK))
        .contains("1 measured, 1 taken back before, none refused.")
        .contains("Taken back before, not entered again");
    assertThat(held(rig).size()).isZero();
  }

  @Test
  void keepsWhatWasTypedBesideWhatIsWrongWithIt() {
    RigClient rig = RigClient.described(http, "paper-slip");
    Map<String, String> fields = fields();
    fields.put("sheetLength", "two feet");
    fields.put("sheetDistanceUncertainty", "51");
    fields.put("sheetDistanceUnit", "yd");
    fields.put("dryRun", "true");
    String page =
        text(send(rig, fields, Map.of("sheet.jpg", UPRIGHT)), HttpStatus.UNPROCESSABLE_CONTENT);
    String form = form(page);
    assertThat(page).contains("Nothing is entered yet", "href=\"#sheetLength\"");
    assertThat(form)
        .startsWith("<details class=\"no-print\" id=\"by-photographs\" open=\"open\">")
        .contains("value=\"two feet\"", "value=\"51\"", "value=\"210\"")
        .contains("<option value=\"yd\" selected=\"selected\">", "checked=\"checked\"")
        .contains("id=\"sheetLength-complaint\"", "id=\"sheetDistanceUncertainty-complaint\"")
        .contains("id=\"photo-complaint\"", "Choose the files again")
        .doesNotContain("id=\"sheetDistance-complaint\"", "id=\"otherSide-complaint\"");
    assertThat(held(rig).size()).isZero();
  }

  @Test
  void asksForAFile() {
    RigClient rig = RigClient.described(http, "paper-none");
    String form = form(text(send(rig, fields(), Map.of()), HttpStatus.UNPROCESSABLE_CONTENT));
    assertThat(form)
        .contains("Expected one photograph or more.", "value=\"210\"")
        .doesNotContain("Choose the files again");
  }

  @Test
  void namesThePhotographThatContradictsTheLedgerAndEntersNone() {
    RigClient rig = RigClient.described(http, "paper-contradiction");
    send(rig, fields(), Map.of("sheet.jpg", UPRIGHT));
    Map<String, String> fields = fields();
    fields.put("sheetDistance", "51");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("fresh.jpg", sheet(0, "2026:05:28 13:00:00"));
    files.put("same.jpg", UPRIGHT);
    String page = text(send(rig, fields, files), HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(form(page))
        .contains("same.jpg (28 May 2026, 12:00:00): another calibration", "value=\"51\"")
        .doesNotContain("fresh.jpg");
    assertThat(held(rig).size()).isEqualTo(1);
  }

  @Test
  void takesTheTypedTimeForAPhotographWhoseFileTellsNone() {
    RigClient rig = RigClient.described(http, "paper-typed");
    Map<String, String> fields = fields();
    fields.put("sheetTakenAt", "2026-05-27 09:30");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("no-time.jpg", UNTOLD);
    files.put("sheet.jpg", UPRIGHT);
    String page = text(send(rig, fields, files), HttpStatus.OK);
    assertThat(page).contains("2 photographs: 2 measured, 2 entered, none refused.");
    assertThat(line(page, "no-time.jpg")).contains("Taken 27 May 2026, 09:30, as typed; ");
    assertThat(line(page, "sheet.jpg")).contains("Taken 28 May 2026, 12:00, as its file tells; ");
    assertThat(times(rig)).containsExactly("2026-05-27T07:30:00Z", "2026-05-28T10:00:00Z");
  }

  /** A camera whose clock was never set, and one whose clock is a century ahead. */
  @Test
  void takesTheTypedTimeForAFileWhoseOwnCannotBe() {
    RigClient rig = RigClient.described(http, "paper-clock");
    for (String day : new String[] {"1970:01:01", "2126:05:28"}) {
      Map<String, byte[]> file = Map.of("clock.jpg", sheet(0, day + " 12:00:00"));
      String refused = text(send(rig, fields(), file), HttpStatus.OK);
      assertThat(line(refused, "clock.jpg"))
          .contains("Refused", "camera&#39;s clock", "“When the sheet was photographed”")
          .doesNotContain("takenAt");
      Map<String, String> fields = fields();
      fields.put("sheetTakenAt", day.startsWith("1970") ? "2026-05-26" : "2026-05-27 12:00+02:00");
      assertThat(text(send(rig, fields, file), HttpStatus.OK)).contains("1 entered", "as typed");
    }
    assertThat(times(rig)).containsExactly("2026-05-26T10:00:00Z", "2026-05-27T10:00:00Z");
  }

  @Test
  void namesTheFieldOfATimeThatIsNotUnderstood() {
    RigClient rig = RigClient.described(http, "paper-noon");
    Map<String, String> fields = fields();
    fields.put("sheetTakenAt", "noon of May");
    String page =
        text(send(rig, fields, Map.of("no-time.jpg", UNTOLD)), HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(page).contains("href=\"#sheetTakenAt\"");
    assertThat(form(page))
        .contains("id=\"sheetTakenAt-complaint\"", "value=\"noon of May\"")
        .contains(
            "When it was photographed is not understood: expected 2", "Choose the files again");
    assertThat(held(rig).size()).isZero();
  }

  @Test
  void entersNoneOfTwoPhotographsThatWouldHaveTheTypedTime() {
    RigClient rig = RigClient.described(http, "paper-both");
    Map<String, String> fields = fields();
    fields.put("sheetTakenAt", "2026-05-27 09:30");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one.jpg", UNTOLD);
    files.put("other.jpg", RenderedSheet.jpeg(6, new ExifBlock().focalLengthMm(400)));
    String page = text(send(rig, fields, files), HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(form(page))
        .contains("id=\"sheetTakenAt-complaint\"", "value=\"2026-05-27 09:30\"")
        .contains("other.jpg (27 May 2026, 09:30:00): another calibration has this very time")
        .contains("Choose the files again")
        .doesNotContain("one.jpg", "takenAt:");
    assertThat(held(rig).size()).isZero();
  }

  @Test
  void countsSetupsFromOneWhereThePageDoes() {
    RigClient rig = RigClient.described(http, "paper-count");
    new PhotoClient(http, rig).send("", "moon.jpg", MOON);
    byte[] zoomed =
        RenderedSheet.jpeg(
            0, new ExifBlock().takenAt("2026:05:28 12:00:00").offset("+02:00").focalLengthMm(300));
    String page = text(send(rig, fields(), Map.of("zoomed.jpg", zoomed)), HttpStatus.OK);
    assertThat(line(page, "zoomed.jpg"))
        .contains("expected 400 mm, as in the other photographs of setup 1.");
  }

  @Test
  void tellsTheUnitOfTheSetupByTheNumberThatThePageShows() {
    RigClient rig = RigClient.described(http, "paper-unit");
    rig.postJson("/setups", "{\"startedAt\": \"2026-05-01T00:00:00Z\"}");
    rig.postJson(
        "/calibrations",
        """
        {"takenAt": "2026-05-20T12:00:00Z", "method": "target", "targetLengthMm": 297,
         "targetLengthUncertaintyMm": 0.2, "targetDistanceM": 50,
         "targetDistanceUncertaintyM": 0.02, "measuredMm": 74.25, "measuredUncertaintyMm": 0.3}""");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("sheet.jpg", UPRIGHT);
    files.put("later.jpg", sheet(0, "2026:05:28 13:00:00"));
    String page = text(send(rig, fields(), files), HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(form(page))
        .contains("sheet.jpg, later.jpg: measured in pixels; expected a length in mm, the unit of")
        .contains("unit of setup 2. Choose the files again")
        .doesNotContain("setup 1", "measuredPx");
    String typed = text(type(rig), HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(typed)
        .contains("id=\"measured-complaint\"", "Expected a length in mm, the unit of setup 2.")
        .doesNotContain("unit of setup 1", "measuredPx");
    assertThat(held(rig).size()).isEqualTo(1);
  }

  /** The form in which a calibration is typed. */
  private ExchangeResult type(RigClient rig) {
    LinkedMultiValueMap<String, String> fields = new LinkedMultiValueMap<>();
    fields.add("takenAt", "2026-05-28 12:00");
    fields.add("length", "297");
    fields.add("lengthUncertainty", "0.2");
    fields.add("lengthUnit", "mm");
    fields.add("distance", "50");
    fields.add("distanceUncertainty", "0.02");
    fields.add("distanceUnit", "m");
    fields.add("measured", "1100");
    fields.add("measuredUncertainty", "1");
    fields.add("measuredUnit", "px");
    return http.post()
        .uri("/rigs/" + rig.slug() + "/calibrations")
        .accept(MediaType.TEXT_HTML)
        .contentType(MediaType.APPLICATION_FORM_URLENCODED)
        .body(fields)
        .exchange()
        .expectBody()
        .returnResult();
  }

  private static List<String> times(RigClient rig) {
    return held(rig).valueStream().map(each -> each.path("takenAt").asString()).sorted().toList();
  }

  private static Map<String, String> fields() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("sheetLength", "297");
    fields.put("sheetLengthUncertainty", "0.2");
    fields.put("sheetLengthUnit", "mm");
    fields.put("sheetDistance", "50");
    fields.put("sheetDistanceUncertainty", "0.02");
    fields.put("sheetDistanceUnit", "m");
    fields.put("otherSide", "210");
    return fields;
  }

  private ExchangeResult send(
      RigClient rig, Map<String, String> fields, Map<String, byte[]> files) {
    LinkedMultiValueMap<String, Object> parts = new LinkedMultiValueMap<>();
    fields.forEach(parts::add);
    files.forEach((name, file) -> parts.add("photo", PhotoClient.part(name, file)));
    return http.post()
        .uri("/rigs/" + rig.slug() + "/calibrations/photos")
        .accept(MediaType.TEXT_HTML)
        .contentType(MediaType.MULTIPART_FORM_DATA)
        .body(parts)
        .exchange()
        .expectBody()
        .returnResult();
  }

  private static JsonNode held(RigClient rig) {
    return rig.get("/calibrations").body();
  }

  private String page(String uri) {
    return text(
        http.get().uri(uri).accept(MediaType.TEXT_HTML).exchange().expectBody().returnResult(),
        HttpStatus.OK);
  }

  /** The disclosure alone. */
  private static String form(String page) {
    int end = page.indexOf("id=\"by-stars\"");
    int start = page.lastIndexOf("<details", page.indexOf("id=\"by-photographs\""));
    return page.substring(start, end);
  }

  /** What is said of one file. */
  private static String line(String page, String file) {
    int start = page.indexOf(file);
    assertThat(start).as(page).isPositive();
    return page.substring(start, page.indexOf("</li>", start));
  }

  private static String text(ExchangeResult result, HttpStatus expected) {
    String body = new String(result.getResponseBodyContent(), StandardCharsets.UTF_8);
    assertThat(result.getStatus()).as(body).isEqualTo(expected);
    return body;
  }

  private static byte[] sheet(double leanDeg, String local) {
    return RenderedSheet.jpeg(leanDeg, told(local));
  }

  private static ExifBlock told(String local) {
    return new ExifBlock().takenAt(local).offset("+02:00").focalLengthMm(400);
  }
}
