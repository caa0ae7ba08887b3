package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PhotoClient;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.ExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.LinkedMultiValueMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Photographs through the ledger page, and the page of the reading that they make. */
@LimbspanIT
class PhotoPagesIT {

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final Pattern READING = Pattern.compile("/rigs/[a-z-]+/readings/\\d+");
  private static final byte[] MOON =
      RenderedMoon.jpeg(
          RenderedMoon.scene(420, 101),
          ExifBlock.usual("2026:05:29 21:10:00").offset("+02:00").exposure(1, 250));
  private static final String TIME_FIELD = "When they were taken, if the files do not say";
  private static final byte[] LETTER = "no picture".getBytes(StandardCharsets.UTF_8);

  @Autowired private RestTestClient http;

  @Test
  void offersAPlaceForPhotographsOnTheLedgerPage() {
    RigClient.described(http, "drop-offer");
    assertThat(page("/rigs/drop-offer"))
        .contains("action=\"/rigs/drop-offer/photos\"", "type=\"file\"", "multiple=\"multiple\"")
        .contains("/js/photos.js");
  }

  @Test
  void answersTheFormWithAPageInWords() {
    RigClient.described(http, "drop-form");
    String page = text(send("/rigs/drop-form/photos", MediaType.TEXT_HTML));
    assertThat(page)
        .contains("2 photographs: 1 measured, 1 refused.", "1 frame, 419.")
        .contains("data-outcome=\"refused\"", "letter.jpg");
    String reading = page(reading(page));
    assertThat(reading)
        .contains("Reading of 29 May 2026, 21:10", "From the photograph moon.jpg.")
        .contains("/image\"", "/overlay.svg\"", "1/250 s")
        .contains("waits for a calibration");
  }

  @Test
  void tellsLineByLineWhatBecomesOfEachFile() {
    RigClient.described(http, "drop-lines");
    List<JsonNode> lines =
        text(send("/rigs/drop-lines/photos", MediaType.APPLICATION_NDJSON))
            .lines()
            .map(MAPPER::readTree)
            .toList();
    assertThat(lines).hasSize(3);
    assertThat(lines.get(0).path("line").path("outcome").asString()).isEqualTo("refused");
    assertThat(lines.get(0).path("line").path("place").asInt()).isEqualTo(1);
    assertThat(lines.get(1).path("line").path("place").asInt()).isZero();
    JsonNode batch = lines.get(2).path("batch");
    assertThat(batch.path("lines").size()).isEqualTo(2);
    assertThat(batch.path("lines").get(0).path("address").asString())
        .isEqualTo(batch.path("readings").get(0).path("address").asString());
  }

  @Test
  void leadsFromTheLogToTheReading() {
    RigClient.described(http, "drop-log");
    String address = reading(text(send("/rigs/drop-log/photos", MediaType.TEXT_HTML)));
    assertThat(page("/rigs/drop-log")).contains("href=\"" + address + "\"");
  }

  @Test
  void saysThatNothingWasAdded() {
    RigClient.described(http, "drop-twice");
    assertThat(text(send("/rigs/drop-twice/photos", MediaType.TEXT_HTML)))
        .doesNotContain("Nothing was added");
    assertThat(text(send("/rigs/drop-twice/photos", MediaType.TEXT_HTML)))
        .contains("2 photographs: 1 held already, 1 refused. Nothing was added.");
  }

  @Test
  void entersNothingWhenOnlyTried() {
    RigClient rig = RigClient.described(http, "drop-tried");
    String page = text(send("/rigs/drop-tried/photos?dryRun=true", MediaType.TEXT_HTML));
    assertThat(page).contains("They were only tried: nothing was entered.");
    assertThat(rig.get("/readings").body().path("readings").size()).isZero();
  }

  @Test
  void saysWhyInTheWordsOfThePage() {
    RigClient rig = RigClient.described(http, "drop-words");
    new PhotoClient(http, rig).send("", "moon.jpg", MOON);
    byte[] zoomed =
        RenderedMoon.jpeg(
            RenderedMoon.scene(420, 101),
            new ExifBlock().takenAt("2026:05:30 21:10:00").offset("+02:00").focalLengthMm(300));
    byte[] untold =
        RenderedMoon.jpeg(RenderedMoon.scene(420, 101), new ExifBlock().focalLengthMm(400));
    String page =
        text(
            send(
                "/rigs/drop-words/photos",
                MediaType.TEXT_HTML,
                Map.of("zoomed.jpg", zoomed, "untold.jpg", untold)));
    assertThat(page)
        .contains("as in the other photographs of setup 1.")
        .contains("Choose it again, with “" + TIME_FIELD + "” filled in on the page of the rig.")
        .doesNotContain("setup 0", "takenAt");
  }

  @Test
  void tellsOfRefusedFilesOnTheLedgerAndBesideTheReading() {
    RigClient rig = RigClient.described(http, "drop-cloudy");
    assertThat(page("/rigs/drop-cloudy")).doesNotContain("Refused photographs");
    byte[] small =
        RenderedMoon.jpeg(
            RenderedMoon.scene(20, 101),
            ExifBlock.usual("2026:05:29 21:14:00").offset("+02:00").exposure(1, 250));
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("moon.jpg", MOON);
    files.put("small.jpg", small);
    files.put("letter.jpg", LETTER);
    JsonNode answers = new PhotoClient(http, rig).send("", files);
    assertThat(page("/rigs/drop-cloudy"))
        .contains("Refused photographs", "2 files without a diameter, refused since ")
        .contains("small.jpg", ", taken 29 May 2026, 21:14:00", "letter.jpg");
    String reading =
        page("/rigs/drop-cloudy/readings/" + answers.get(0).path("readingId").asLong());
    assertThat(reading)
        .contains("Taken beside them, and refused", "small.jpg")
        .doesNotContain("letter.jpg");
  }

  @Test
  void takesTheTypedTimeForPhotographsWhoseFilesTellNone() {
    RigClient rig = RigClient.described(http, "drop-typed");
    assertThat(page("/rigs/drop-typed")).contains("for=\"takenAt\">" + TIME_FIELD + "<");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one.jpg", untold(102));
    files.put("other.jpg", untold(103));
    files.put("moon.jpg", MOON);
    String page = text(send("drop-typed", "2026-05-29 21:12", MediaType.TEXT_HTML, files));
    assertThat(page).contains("3 photographs: 3 measured, none refused.", "3 frames");
    assertThat(line(page, "one.jpg")).contains("Taken 29 May 2026, 21:12, as typed; diameter ");
    assertThat(line(page, "other.jpg")).contains("Taken 29 May 2026, 21:12, as typed; ");
    assertThat(line(page, "moon.jpg")).contains("Taken 29 May 2026, 21:10, as its file tells; ");
    assertThat(rig.get("/readings").body().path("readings").size()).isEqualTo(1);
    String again = text(send("drop-typed", "2026-05-29 22:00", MediaType.TEXT_HTML, files));
    assertThat(line(again, "one.jpg"))
        .contains("Held already", "Taken 29 May 2026, 21:12, as it is held; ");
  }

  @Test
  void takesTheTypedTimeWhereTheOneOfTheFileCannotBe() {
    RigClient rig = RigClient.described(http, "drop-clock");
    byte[] unset =
        RenderedMoon.jpeg(
            RenderedMoon.scene(420, 101), ExifBlock.usual("1970:01:01 00:00:00").offset("+02:00"));
    String page =
        text(
            send(
                "drop-clock",
                "2026-05-29 21:12+02:00",
                MediaType.TEXT_HTML,
                Map.of("unset.jpg", unset)));
    assertThat(line(page, "unset.jpg")).contains("Taken 29 May 2026, 21:12, as typed; ");
    assertThat(rig.get("/readings").body().path("readings").get(0).path("takenAt").asString())
        .isEqualTo("2026-05-29T19:12:00Z");
  }

  /** The rig's clock shows half past two on 29 March 2026 not at all, on 26 October 2025 twice. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "noon of May      | When it was photographed is not understood: expected 2",
        "2026-05-29       | Expected the time of day too, such as 2026-05-29 21:40",
        "2126-05-29 21:12 | Expected a time that has passed.",
        "1582-05-29 21:12 | Expected a time from 1",
        "2026-03-29 02:30 | is set forward over this time",
        "2025-10-26 02:30 | shows this time twice"
      })
  void tellsBesideItsFieldWhatIsWrongWithATime(String typed, String told) {
    String slug = "drop-slip-" + typed.replaceAll("[^a-z0-9]+", "-");
    RigClient rig = RigClient.described(http, slug);
    Map<String, byte[]> files = Map.of("untold.jpg", untold(101), "moon.jpg", MOON);
    ExchangeResult refused = send(slug, typed, MediaType.TEXT_HTML, files);
    assertThat(refused.getStatus()).isEqualTo(HttpStatus.UNPROCESSABLE_CONTENT);
    String page = body(refused);
    assertThat(page)
        .contains("Nothing is entered yet", "href=\"#takenAt\"", "value=\"" + typed + "\"")
        .contains("Choose the files again");
    int complaint = page.indexOf("id=\"takenAt-complaint\"");
    assertThat(page.substring(complaint, page.indexOf("</p>", complaint)))
        .contains(told)
        .doesNotContain("hidden");
    ExchangeResult lines = send(slug, typed, MediaType.APPLICATION_NDJSON, files);
    assertThat(lines.getStatus()).isEqualTo(HttpStatus.UNPROCESSABLE_CONTENT);
    List<JsonNode> only = body(lines).lines().map(MAPPER::readTree).toList();
    assertThat(only).hasSize(1);
    assertThat(only.get(0).path("complaints").path("takenAt").asString()).contains(told);
    assertThat(rig.get("/photos").body().path("photos").size()).isZero();
    assertThat(rig.get("/readings").body().path("readings").size()).isZero();
  }

  @Test
  void asksForAFile() {
    RigClient.described(http, "drop-no-file");
    ExchangeResult refused = send("drop-no-file", "", MediaType.TEXT_HTML, Map.of());
    assertThat(refused.getStatus()).isEqualTo(HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(body(refused))
        .contains("Expected one photograph or more.", "href=\"#photo\"")
        .doesNotContain("Choose the files again");
  }

  @Test
  void saysThatAReadingStandsNoMore() {
    RigClient rig = RigClient.described(http, "drop-gone");
    String address = reading(text(send("/rigs/drop-gone/photos", MediaType.TEXT_HTML)));
    assertThat(page(address)).doesNotContain("does not stand any more");
    long photoId = rig.get("/photos").body().path("photos").get(0).path("id").asLong();
    rig.postJson("/photos/" + photoId + "/withdraw", "{\"reason\": \"a balloon\"}");
    assertThat(page(address)).contains("does not stand any more");
  }

  @Test
  void knowsNoReadingThatIsNotThere() {
    RigClient.described(http, "drop-none");
    http.get()
        .uri("/rigs/drop-none/readings/987654321")
        .accept(MediaType.TEXT_HTML)
        .exchange()
        .expectStatus()
        .isNotFound();
  }

  private ExchangeResult send(String uri, MediaType accept) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("moon.jpg", MOON);
    files.put("letter.jpg", LETTER);
    return send(uri, accept, files);
  }

  private ExchangeResult send(String uri, MediaType accept, Map<String, byte[]> files) {
    return send(uri, accept, files, new LinkedMultiValueMap<>());
  }

  private ExchangeResult send(
      String slug, String takenAt, MediaType accept, Map<String, byte[]> files) {
    LinkedMultiValueMap<String, Object> fields = new LinkedMultiValueMap<>();
    fields.add("takenAt", takenAt);
    return send("/rigs/" + slug + "/photos", accept, files, fields);
  }

  private ExchangeResult send(
      String uri,
      MediaType accept,
      Map<String, byte[]> files,
      LinkedMultiValueMap<String, Object> parts) {
    files.forEach((name, file) -> parts.add("photo", PhotoClient.part(name, file)));
    return http.post()
        .uri(uri)
        .accept(accept)
        .contentType(MediaType.MULTIPART_FORM_DATA)
        .body(parts)
        .exchange()
        .expectBody()
        .returnResult();
  }

  private String page(String uri) {
    return text(
        http.get().uri(uri).accept(MediaType.TEXT_HTML).exchange().expectBody().returnResult());
  }

  private static String reading(String page) {
    Matcher found = READING.matcher(page);
    assertThat(found.find()).as(page).isTrue();
    return found.group();
  }

  private static byte[] untold(long seed) {
    return RenderedMoon.jpeg(
        RenderedMoon.scene(420, seed), new ExifBlock().focalLengthMm(400).exposure(1, 250));
  }

  /** What is said of one file. */
  private static String line(String page, String file) {
    int start = page.indexOf(">" + file + "<");
    assertThat(start).as(page).isPositive();
    return page.substring(start, page.indexOf("</li>", start));
  }

  private static String text(ExchangeResult result) {
    String body = body(result);
    assertThat(result.getStatus()).as(body).isEqualTo(HttpStatus.OK);
    return body;
  }

  private static String body(ExchangeResult result) {
    return new String(result.getResponseBodyContent(), StandardCharsets.UTF_8);
  }
}
