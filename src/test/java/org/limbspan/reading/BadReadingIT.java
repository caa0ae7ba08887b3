package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** What cannot be a reading is refused by field, value and what was expected; nothing is stored. */
@LimbspanIT
class BadReadingIT {

  private static final String GOOD_FIELDS =
      "\"takenAt\": \"2026-02-01T21:14:00Z\", \"axis\": \"horizontal\", \"diameterPx\": 1760.5,"
          + " \"uncertaintyPx\": 1.6";

  @Autowired private RestTestClient http;
  private RigClient rig;

  @BeforeEach
  void describeRig() {
    rig = new RigClient(http, "bad-readings");
    if (rig.get("").status() == 404) {
      rig = RigClient.described(http, "bad-readings");
    }
  }

  /** Field, JSON value in its place, part of what was expected. */
  static Stream<Arguments> badFields() {
    String dayAfterTomorrow = Instant.now().plus(49, ChronoUnit.HOURS).toString();
    return Stream.of(
        Arguments.of("takenAt", "null", "offset"),
        Arguments.of("takenAt", "\"2026-02-01T21:14:00\"", "different instants"),
        Arguments.of("takenAt", "\"2026-02-30T21:14:00Z\"", "ISO 8601"),
        Arguments.of("takenAt", "\"NaN\"", "ISO 8601"),
        Arguments.of("takenAt", "1769980440", "ISO 8601"),
        Arguments.of("takenAt", "\"" + dayAfterTomorrow + "\"", "a day ahead"),
        Arguments.of("takenAt", "\"1979-11-30T23:59:59Z\"", "ephemeris"),
        Arguments.of("takenAt", "\"0001-01-01T00:00:00Z\"", "ephemeris"),
        Arguments.of("takenAt", "\"-999999999-01-01T00:00:00Z\"", "ephemeris"),
        Arguments.of("takenAt", "\"+999999999-12-31T00:00:00Z\"", "a day ahead"),
        Arguments.of("axis", "null", "horizontal, vertical, limb-fit"),
        Arguments.of("axis", "\"diagonal\"", "horizontal, vertical, limb-fit"),
        Arguments.of("axis", "\"HORIZONTAL\"", "horizontal, vertical, limb-fit"),
        Arguments.of("axis", "2", "horizontal, vertical, limb-fit"),
        Arguments.of("diameterPx", "null", "above 0"),
        Arguments.of("diameterPx", "0", "above 0"),
        Arguments.of("diameterPx", "-1760.5", "above 0"),
        Arguments.of("diameterPx", "1e300", "at most 1000000"),
        Arguments.of("diameterPx", "\"NaN\"", "a number"),
        Arguments.of("diameterPx", "\"Infinity\"", "a number"),
        Arguments.of("diameterPx", "\"1760.5\"", "a number"),
        Arguments.of("diameterPx", "true", "a number"),
        Arguments.of("uncertaintyPx", "null", "three or more frames"),
        Arguments.of("uncertaintyPx", "0", "above 0"),
        Arguments.of("uncertaintyPx", "-1", "above 0"),
        Arguments.of("uncertaintyPx", "1760.5", "below the value"),
        Arguments.of("uncertaintyPx", "\"NaN\"", "a number"),
        Arguments.of("framesPx", "[1, \"x\"]", "a list of numbers"),
        Arguments.of("framesPx", "1760", "a list of numbers"),
        Arguments.of("framesPx", "[1760, 0]", "above 0"),
        Arguments.of("altitudeDeg", "92.1", "from -90 to 92"),
        Arguments.of("altitudeDeg", "-91", "from -90 to 92"),
        Arguments.of("altitudeDeg", "\"high\"", "a number"),
        Arguments.of("azimuthDeg", "-0.1", "from 0 to 360"),
        Arguments.of("azimuthDeg", "360.1", "from 0 to 360"),
        Arguments.of("exposureS", "0", "above 0"),
        Arguments.of("exposureS", "-0.004", "above 0"),
        Arguments.of("exposureS", "\"1/250\"", "a number"),
        Arguments.of("iso", "0", "from 1"),
        Arguments.of("iso", "100.5", "whole"),
        Arguments.of("fNumber", "0", "above 0"),
        Arguments.of("fNumber", "\"f/8\"", "a number"),
        Arguments.of("sky", "7", "a text"),
        Arguments.of("sky", "\"" + "x".repeat(501) + "\"", "at most 500"),
        Arguments.of("note", "\"a\\u0000b\"", "control characters"),
        Arguments.of("note", "\"\\ud83c\"", "control characters"),
        Arguments.of("note", "\"" + "x".repeat(4001) + "\"", "at most 4000"),
        Arguments.of("note", "[]", "a text"),
        Arguments.of("supersedes", "\"yes\"", "true or false"));
  }

  @ParameterizedTest
  @MethodSource("badFields")
  void refusesAFieldOfJson(String field, String value, String expected) {
    String json = "{" + without(field) + ", \"" + field + "\": " + value + "}";
    Answer answer = rig.postJson("/readings", json);
    assertThat(answer.status()).as(answer.toString()).isEqualTo(422);
    assertThat(answer.violation(field).path("expected").asString()).contains(expected);
    assertNothingStored();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-02-01T21:14:00,horizontal,1760.5,1.6,,,,,,,,, | taken_at | different instants",
        ",horizontal,1760.5,1.6,,,,,,,,, | taken_at | offset",
        "2126-02-01T21:14:00Z,horizontal,1760.5,1.6,,,,,,,,, | taken_at | a day ahead",
        "1969-07-20T20:17:00Z,horizontal,1760.5,1.6,,,,,,,,, | taken_at | ephemeris",
        "2026-02-01T21:14:00Z,sideways,1760.5,1.6,,,,,,,,, | axis | limb-fit",
        "2026-02-01T21:14:00Z,horizontal,NaN,1.6,,,,,,,,, | diameter_px | a number",
        "2026-02-01T21:14:00Z,horizontal,,,,,,,,,,, | diameter_px | a number",
        "2026-02-01T21:14:00Z,horizontal,1760.5,,,,,,,,,, | uncertainty_px | three or more frames",
        "2026-02-01T21:14:00Z,horizontal,1760.5,Infinity,,,,,,,,, | uncertainty_px | a number",
        "2026-02-01T21:14:00Z,horizontal,1760.5,1.6,32,0.1,,,,,,, | diameter_px | one unit",
        "2026-02-01T21:14:00Z,horizontal,,,1950,0.1,,,,,,, | diameter_arcmin | at most 599",
        "2026-02-01T21:14:00Z,horizontal,,,32,,,,,,,, | uncertainty_arcmin | three or more",
        "2026-02-01T21:14:00Z,horizontal,1760.5,1.6,,,95,,,,,, | altitude_deg | from -90 to 92",
        "2026-02-01T21:14:00Z,horizontal,1760.5,1.6,,,,400,,,,, | azimuth_deg | from 0 to 360",
        "2026-02-01T21:14:00Z,horizontal,1760.5,1.6,,,,,1/250,,,, | exposure_s | a number",
        "2026-02-01T21:14:00Z,horizontal,1760.5,1.6,,,,,,-400,,, | iso | from 1",
        "2026-02-01T21:14:00Z,horizontal,1760.5,1.6,,,,,,,f/11,, | f_number | a number",
        "2026-02-01T21:14:00Z,horizontal,1760.5,1.6 | line | as many fields",
      })
  void refusesALineOfCsv(String line, String field, String expected) {
    String csv =
        "taken_at,axis,diameter_px,uncertainty_px,diameter_arcmin,uncertainty_arcmin,altitude_deg,"
            + "azimuth_deg,exposure_s,iso,f_number,sky,note\n"
            + "2026-02-01T20:14:00Z,horizontal,1760.5,1.6,,,,,,,,,\n"
            + line
            + "\n";
    Answer answer = rig.postCsv("/readings", csv);
    assertThat(answer.status()).as(answer.toString()).isEqualTo(422);
    JsonNode violation = answer.violation(field);
    assertThat(violation.path("line").asInt()).isEqualTo(3);
    assertThat(violation.path("expected").asString()).contains(expected);
    assertThat(answer.body().path("detail").asString()).contains("1 of 2");
    assertNothingStored();
  }

  @Test
  void namesEveryBadLineOfABatch() {
    StringBuilder csv = new StringBuilder("taken_at,axis,diameter_px,uncertainty_px\n");
    for (int minute = 0; minute < 60; minute++) {
      String axis = minute % 3 == 0 ? "sideways" : "horizontal";
      csv.append("2026-02-01T21:%02d:00Z,%s,1760.5,1.6\n".formatted(minute, axis));
    }
    Answer answer = rig.postCsv("/readings", csv.toString());
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body().path("violations").size()).isEqualTo(20);
    assertThat(answer.body().path("detail").asString()).startsWith("20 of 60 readings");
    assertThat(answer.body().path("violations").get(19).path("line").asInt()).isEqualTo(59);
    assertNothingStored();
  }

  @Test
  void namesAThousandBadLinesAtMostAndTellsTheirCount() {
    StringBuilder csv = new StringBuilder("taken_at,axis,diameter_px,uncertainty_px\n");
    for (int i = 0; i < 2500; i++) {
      csv.append("yesterday,horizontal,1760.5,1.6\n");
    }
    Answer answer = rig.postCsv("/readings", csv.toString());
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body().path("violations").size()).isEqualTo(1000);
    assertThat(answer.body().path("detail").asString())
        .contains("2500 of 2500")
        .contains("first 1000");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "axis,diameter_px,uncertainty_px | taken_at",
        "taken_at,diameter_px,uncertainty_px | axis",
        "taken_at,axis,uncertainty_px | diameter_px",
      })
  void refusesACsvWithoutARequiredColumn(String header, String missing) {
    Answer answer = rig.postCsv("/readings", header + "\n1,2,3\n");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body().path("detail").asString()).contains(missing);
    assertThat(answer.body().path("violations").get(0).path("line").asInt()).isEqualTo(1);
    assertNothingStored();
  }

  @Test
  void refusesAnUploadThatEndsInsideQuotes() {
    Answer answer =
        rig.postCsv(
            "/readings",
            """
            taken_at,axis,diameter_px,uncertainty_px,note
            2026-02-01T20:14:00Z,horizontal,1760.5,1.6,fine
            2026-02-01T21:14:00Z,horizontal,1760.5,1.6,"cut sh\
            """
                .stripTrailing());
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body().path("detail").asString()).contains("cut short");
    assertNothingStored();
  }

  @Test
  void refusesBodiesThatAreNeitherJsonNorCsv() {
    assertThat(rig.postJson("/readings", "taken_at,axis\n").status()).isEqualTo(400);
    assertThat(rig.postJson("/readings", "[{" + GOOD_FIELDS + "}").status()).isEqualTo(400);
    assertThat(rig.postCsv("/readings", "").status()).isEqualTo(400);
    assertThat(rig.postCsv("/readings", new byte[] {(byte) 0xff, 0, 1, 2}).status()).isEqualTo(400);
    http.post()
        .uri("/api/rigs/bad-readings/readings")
        .contentType(org.springframework.http.MediaType.APPLICATION_XML)
        .body("<reading/>")
        .exchange()
        .expectStatus()
        .isEqualTo(415);
    assertNothingStored();
  }

  @Test
  void answersNotFoundForAnUnknownRig() {
    RigClient unknown = new RigClient(http, "no-such-rig");
    assertThat(unknown.postJson("/readings", "{" + GOOD_FIELDS + "}").status()).isEqualTo(404);
    assertThat(unknown.get("/readings").status()).isEqualTo(404);
  }

  private void assertNothingStored() {
    assertThat(rig.get("/readings").body().path("readings").isEmpty()).isTrue();
  }

  private static String without(String field) {
    return Stream.of(GOOD_FIELDS.split(", "))
        .filter(each -> !each.startsWith("\"" + field + "\""))
        .reduce((one, other) -> one + ", " + other)
        .orElseThrow();
  }
}
