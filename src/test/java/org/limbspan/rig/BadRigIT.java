package org.limbspan.rig;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** What cannot describe an instrument is refused by field, value and what was expected. */
@LimbspanIT
class BadRigIT {

  private static final JsonMapper MAPPER = new JsonMapper();

  private static final String RIG =
      """
      {"slug": "bad-rig-other", "name": "Invented", "latitudeDeg": 48.2, "longitudeDeg": 16.4,
       "elevationM": 170, "timeZone": "Europe/Vienna", "note": "made up"}""";

  private static final String SHEET =
      """
      {"takenAt": "2026-01-10T12:00:00Z", "method": "target", "targetLengthMm": 297,
       "targetLengthUncertaintyMm": 0.15, "targetDistanceM": 50, "targetDistanceUncertaintyM": 0.02,
       "measuredPx": 1100, "measuredUncertaintyPx": 1.1}""";

  private static final String STARS =
      """
      {"takenAt": "2026-01-10T22:00:00Z", "method": "star-pair", "separationArcmin": 30,
       "separationUncertaintyArcmin": 0.003, "measuredPx": 1616, "measuredUncertaintyPx": 0.6}""";

  @Autowired private RestTestClient http;
  private RigClient rig;

  @BeforeEach
  void describeRig() {
    rig = new RigClient(http, "bad-rig");
    if (rig.get("").status() == 404) {
      rig = RigClient.described(http, "bad-rig");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      value = {
        "slug | null | a-z",
        "slug | \"Garden\" | a-z",
        "slug | \"my garden\" | a-z",
        "slug | \"aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\" | 1 to 40",
        "slug | \"../etc\" | a-z",
        "slug | 7 | a-z",
        "name | null | a text",
        "name | \"  \" | a text",
        "latitudeDeg | null | from -90 to 90",
        "latitudeDeg | 90.0001 | from -90 to 90",
        "latitudeDeg | \"48.2\" | a number",
        "latitudeDeg | \"NaN\" | a number",
        "longitudeDeg | null | from -180 to 180",
        "longitudeDeg | -180.5 | from -180 to 180",
        "longitudeDeg | 196 | from -180 to 180",
        "elevationM | null | from -500 to 9000",
        "elevationM | -501 | from -500 to 9000",
        "elevationM | 9001 | from -500 to 9000",
        "elevationM | \"high\" | a number",
        "timeZone | null | IANA",
        "timeZone | \"Mars/Olympus\" | IANA",
        "timeZone | \"+02:00\" | IANA",
        "note | 7 | a text",
        "colour | \"red\" | none but the fields",
      })
  void refusesAFieldOfARig(String field, String value, String expected) {
    Answer answer = rig.describe(with(RIG, field, value));
    assertRefused(answer, field, expected);
    assertThat(new RigClient(http, "bad-rig-other").get("").status()).isEqualTo(404);
  }

  @Test
  void refusesATakenSlug() {
    Answer answer = rig.describe(RIG.replace("bad-rig-other", "bad-rig"));
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.violation("slug").path("value").asString()).isEqualTo("bad-rig");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      value = {
        "startedAt | null | offset",
        "startedAt | \"2026-02-01T21:14:00\" | different instants",
        "startedAt | \"2126-02-01T21:14:00Z\" | a day ahead",
        "note | [] | a text",
        "startetAt | \"2026-02-01T21:14:00Z\" | none but the fields",
      })
  void refusesAFieldOfASetup(String field, String value, String expected) {
    String setup = with("{\"startedAt\": \"2026-02-01T21:14:00Z\"}", field, value);
    assertRefused(rig.postJson("/setups", setup), field, expected);
    assertThat(rig.get("/setups").body().size()).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      value = {
        "takenAt | null | offset",
        "takenAt | \"2026-01-10T12:00:00\" | different instants",
        "takenAt | \"2126-01-10T12:00:00Z\" | a day ahead",
        "method | null | target, star-pair",
        "method | \"guess\" | target, star-pair",
        "targetLengthMm | null | above 0",
        "targetLengthMm | 0 | above 0",
        "targetLengthMm | \"NaN\" | a number",
        "targetLengthUncertaintyMm | null | from 0",
        "targetLengthUncertaintyMm | -0.1 | from 0",
        "targetLengthUncertaintyMm | 297 | below the value",
        "targetDistanceM | null | above 0",
        "targetDistanceM | -50 | above 0",
        "targetDistanceUncertaintyM | null | from 0",
        "targetDistanceUncertaintyM | 51 | below the value",
        "measuredPx | null | above 0",
        "measuredPx | \"Infinity\" | a number",
        "measuredUncertaintyPx | null | above 0",
        "measuredUncertaintyPx | 0 | above 0",
        "measuredUncertaintyPx | 1100 | below the value",
        "measuredMm | 74 | not both",
        "note | {} | a text",
        "supersedes | 1 | true or false",
      })
  void refusesAFieldOfATarget(String field, String value, String expected) {
    assertRefused(rig.postJson("/calibrations", with(SHEET, field, value)), field, expected);
    assertThat(rig.get("/calibrations").body().isEmpty()).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      value = {
        "separationArcmin | null | above 0",
        "separationArcmin | 0 | above 0",
        "separationArcmin | 10800 | at most 10799",
        "separationUncertaintyArcmin | null | from 0",
        "separationUncertaintyArcmin | 30 | below the value",
      })
  void refusesAFieldOfAStarPair(String field, String value, String expected) {
    assertRefused(rig.postJson("/calibrations", with(STARS, field, value)), field, expected);
    assertThat(rig.get("/calibrations").body().isEmpty()).isTrue();
  }

  @Test
  void refusesAllCalibrationsOfAFileWithOneBadLine() {
    Answer answer =
        rig.postCsv(
            "/calibrations",
            """
            taken_at,target_length_mm,target_length_uncertainty_mm,target_distance_m,target_distance_uncertainty_m,measured_px,measured_uncertainty_px
            2026-01-10T12:00:00Z,297,0.15,50,0.02,1100,1.1
            2026-01-11T12:00:00Z,297,0.15,50,0.02,-1100,1.1
            """);
    assertRefused(answer, "measured_px", "above 0");
    assertThat(answer.violation("measured_px").path("line").asInt()).isEqualTo(3);
    assertThat(rig.get("/calibrations").body().isEmpty()).isTrue();
  }

  @Test
  void refusesAFileOfCalibrationsWithoutAColumn() {
    Answer answer = rig.postCsv("/calibrations", "taken_at,measured_px\n");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body().path("detail").asString()).contains("target_length_mm");
  }

  private static void assertRefused(Answer answer, String field, String expected) {
    assertThat(answer.status()).as(answer.toString()).isEqualTo(422);
    assertThat(answer.violation(field).path("expected").asString()).contains(expected);
  }

  private static String with(String json, String field, String value) {
    ObjectNode node = (ObjectNode) MAPPER.readTree(json);
    node.set(field, MAPPER.readTree(value));
    return node.toString();
  }
}
