package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RawHttp;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** CSV as spreadsheets write it, and uploads that break off. */
@LimbspanIT
class CsvFormsIT {

  @Autowired private RestTestClient http;
  @LocalServerPort private int port;

  @Test
  void takesASemicolonFileWithMarkCommasCrlfAndAQuotedNoteOfTwoLines() {
    RigClient rig = RigClient.described(http, "csv-spreadsheet");
    String csv =
        "\uFEFFnote;Seeing;uncertainty_px;diameter_px;axis;taken_at;exposure_s\r\n"
            + "\"first\r\nsecond\";3 von 5;1,6;1760,53;horizontal;2026-02-01T22:14:00+01:00;0,004"
            + "\r\n;;1,6;1761,5;horizontal;2026-02-01T23:14:00+01:00;\r\n;;;;;;\r\n";
    Answer answer = rig.postCsv("/readings", csv.getBytes(StandardCharsets.UTF_8));
    assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
    assertThat(answer.body().path("stored").asInt()).isEqualTo(2);
    JsonNode first = rig.get("/readings").body().path("readings").get(0);
    assertThat(first.path("diameterPx").asDouble()).isEqualTo(1760.53);
    assertThat(first.path("exposureS").asDouble()).isEqualTo(0.004);
    assertThat(first.path("note").asString()).isEqualTo("first\r\nsecond\nseeing: 3 von 5");
  }

  /** Letters that the database's COPY gives a meaning of its own. */
  @Test
  void keepsANoteToTheLetter() {
    RigClient rig = RigClient.described(http, "csv-letters");
    for (String note : List.of("a\tb\nc\rd\\e", "\\N", "\\.", "a\n\\.\nb", "\"7° 🌕\"", "null")) {
      String at = "2026-02-01T21:1" + rig.get("/readings").body().path("readings").size() + ":00Z";
      String quoted = "\"" + note.replace("\"", "\"\"") + "\"";
      String csv =
          "taken_at,axis,diameter_px,uncertainty_px,note\n" + at + ",horizontal,1760,1.6," + quoted;
      Answer answer = rig.postCsv("/readings", csv.getBytes(StandardCharsets.UTF_8));
      assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
      JsonNode readings = rig.get("/readings").body().path("readings");
      assertThat(readings.get(readings.size() - 1).path("note").asString()).isEqualTo(note);
    }
  }

  @Test
  void refusesLettersThatAreNotInTheEncodingNamed() {
    RigClient rig = RigClient.described(http, "csv-encoding");
    String csv =
        """
        taken_at,axis,diameter_px,uncertainty_px,note
        2026-02-01T22:14:00+01:00,horizontal,1760,1.6,München
        """;
    byte[] windows = csv.getBytes(Charset.forName("windows-1252"));
    Answer refused = rig.postCsv("/readings", windows);
    assertThat(refused.status()).isEqualTo(400);
    assertThat(refused.body().path("detail").asString()).contains("UTF-8");
    assertThat(rig.get("/readings").body().path("readings").isEmpty()).isTrue();
  }

  @Test
  void computesTheUncertaintyFromThreeFrames() {
    RigClient rig = RigClient.described(http, "frames");
    Answer answer =
        rig.postJson(
            "/readings",
            """
            [{"takenAt": "2026-02-01T21:14:00Z", "axis": "horizontal", "diameterPx": 1760,
              "framesPx": [1759, 1760, 1761]},
             {"takenAt": "2026-02-01T21:20:00Z", "axis": "horizontal",
              "framesPx": [1759, 1760, 1761, 1762]}]""");
    assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
    JsonNode readings = rig.get("/readings").body().path("readings");
    // s = 1, over root 3.
    assertThat(readings.get(0).path("uncertaintyPx").asDouble())
        .isCloseTo(1 / Math.sqrt(3), within(1e-15));
    assertThat(readings.get(0).path("framesPx").size()).isEqualTo(3);
    assertThat(readings.get(1).path("diameterPx").asDouble()).isEqualTo(1760.5);

    for (String frames : List.of("[1759, 1761]", "[1760, 1760, 1760]", "[1765, 1766, 1767]")) {
      Answer refused =
          rig.postJson(
              "/readings",
              """
              {"takenAt": "2026-02-01T22:14:00Z", "axis": "horizontal", "diameterPx": 1760,
               "framesPx": %s}"""
                  .formatted(frames));
      assertThat(refused.status()).as(frames).isEqualTo(422);
    }
  }

  @Test
  void storesNothingOfAnUploadShorterThanAnnounced() throws Exception {
    RigClient rig = RigClient.described(http, "csv-truncated");
    String csv =
        """
        taken_at,axis,diameter_px,uncertainty_px
        2026-02-01T22:14:00+01:00,horizontal,1760,1.6
        """;
    String answer =
        new RawHttp(port)
            .sendCutShort(
                "POST /api/rigs/csv-truncated/readings",
                csv,
                csv.length() + 1000,
                "Host: localhost:" + port,
                "Content-Type: text/csv");
    assertThat(answer).doesNotContain("200 OK");
    assertThat(rig.get("/readings").body().path("readings").isEmpty()).isTrue();
  }
}
