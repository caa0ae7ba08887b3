package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
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
        .contains("as in the other photographs of setup 1.", "This form takes no other time")
        .doesNotContain("setup 0", "Send it again with takenAt");
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
    LinkedMultiValueMap<String, Object> parts = new LinkedMultiValueMap<>();
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

  private static String text(ExchangeResult result) {
    String body = new String(result.getResponseBodyContent(), StandardCharsets.UTF_8);
    assertThat(result.getStatus()).as(body).isEqualTo(HttpStatus.OK);
    return body;
  }
}
