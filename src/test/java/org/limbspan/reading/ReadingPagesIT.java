package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** Readings given out page by page and as CSV. */
@LimbspanIT
class ReadingPagesIT {

  @Autowired private RestTestClient http;

  @Test
  void pagesThroughAllReadingsOnceOldestFirst() {
    RigClient rig = filled("pages-all");
    List<String> instants = new ArrayList<>();
    String next = "";
    int pages = 0;
    do {
      Answer page = rig.get("/readings?limit=25" + next);
      page.body().path("readings").forEach(each -> instants.add(each.path("takenAt").asString()));
      next = page.body().has("next") ? "&after=" + page.body().path("next").asString() : "";
      pages++;
    } while (!next.isEmpty());
    assertThat(instants).hasSize(108).isSorted().doesNotHaveDuplicates();
    assertThat(pages).isEqualTo(5);
  }

  @Test
  void pagesThroughReadingsOfOneInstantByAxis() {
    RigClient rig = RigClient.described(http, "pages-axes");
    for (String axis : List.of("vertical", "limb-fit", "horizontal")) {
      rig.postJson(
          "/readings",
          """
          {"takenAt": "2026-02-01T21:14:00Z", "axis": "%s", "diameterPx": 1760.5,
           "uncertaintyPx": 1.6}"""
              .formatted(axis));
    }
    List<String> axes = new ArrayList<>();
    String next = "";
    do {
      JsonNode page = rig.get("/readings?limit=1" + next).body();
      axes.add(page.path("readings").get(0).path("axis").asString());
      next = page.has("next") ? "&after=" + page.path("next").asString() : "";
    } while (!next.isEmpty());
    assertThat(axes).containsExactlyInAnyOrder("vertical", "limb-fit", "horizontal");
  }

  @Test
  void takesTheFirstInstantInAndLeavesTheLastOut() {
    RigClient rig = RigClient.described(http, "pages-half-open");
    rig.postCsv(
        "/readings",
        """
        taken_at,axis,diameter_px,uncertainty_px
        2026-02-01T21:00:00Z,horizontal,1760,1.6
        2026-02-01T22:00:00Z,horizontal,1761,1.6
        2026-02-01T23:00:00Z,horizontal,1762,1.6
        """);
    JsonNode page =
        rig.get("/readings?from=2026-02-01T22:00:00+01:00&to=2026-02-01T23:00:00Z").body();
    assertThat(page.path("readings").valueStream().map(each -> each.path("diameterPx").asInt()))
        .containsExactly(1760, 1761);
  }

  @ParameterizedTest
  @CsvSource({
    "limit=0,limit",
    "limit=5001,limit",
    "limit=many,limit",
    "limit=NaN,limit",
    "from=2026-02-01,from",
    "to=2026-02-01T21:00:00,to",
    "from=2026-02-02T00:00:00Z&to=2026-02-01T00:00:00Z,to",
    "from=0001-01-01T00:00:00Z,from",
    "after=made-up,after",
    "after=MjAyNg,after",
  })
  void refusesParametersThatMakeNoSense(String query, String field) {
    RigClient rig = new RigClient(http, "pages-parameters");
    if (rig.get("").status() == 404) {
      RigClient.described(http, "pages-parameters");
    }
    Answer answer = rig.get("/readings?" + query);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.violation(field).path("expected").asString()).isNotEmpty();
  }

  @Test
  void streamsAllReadingsAsCsvWithWhatIsComputed() {
    RigClient rig = filled("pages-csv");
    JsonNode json = rig.get("/readings?limit=5000").body().path("readings");
    List<NamedCsvRecord> rows =
        CsvReader.builder().ofNamedCsvRecord(rig.getText("/readings", "text/csv")).stream()
            .toList();
    assertThat(rows).hasSize(108);
    for (int i = 0; i < rows.size(); i++) {
      NamedCsvRecord row = rows.get(i);
      JsonNode reading = json.get(i);
      assertThat(row.getField("taken_at")).isEqualTo(reading.path("takenAt").asString());
      assertNumber(row, "diameter_px", reading.path("diameterPx"));
      assertNumber(row, "diameter_arcmin", reading.path("diameterArcmin"));
      assertNumber(row, "residual_percent", reading.path("residualPercent"));
      assertNumber(row, "predicted_altitude_deg", reading.path("predicted").path("altitudeDeg"));
      assertNumber(
          row, "predicted_days_from_perigee", reading.path("predicted").path("daysFromPerigee"));
    }
  }

  @Test
  void answersJsonToAClientThatTakesAnything() {
    RigClient rig = RigClient.described(http, "pages-any");
    assertThat(rig.getText("/readings", "*/*")).startsWith("{\"readings\"");
  }

  @Test
  void remarksOnAMoonBelowTheHorizon() {
    RigClient rig = RigClient.described(http, "pages-horizon");
    // Full Moon of 1 February 2026, 22:09 UTC: high at night in Vienna, below at noon.
    rig.postCsv(
        "/readings",
        """
        taken_at,axis,diameter_arcmin,uncertainty_arcmin
        2026-02-01T12:00:00Z,horizontal,32.5,0.03
        2026-02-01T22:00:00Z,horizontal,32.5,0.03
        """);
    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.get(0).path("remarks").get(0).asString()).contains("below the horizon");
    assertThat(readings.get(0).path("predicted").path("altitudeDeg").asDouble()).isNegative();
    assertThat(readings.get(1).path("remarks").isEmpty()).isTrue();
  }

  private RigClient filled(String slug) {
    ReferenceFolder folder = new ReferenceFolder("clean-pairs");
    RigClient rig = folder.describe(http, slug);
    rig.postCsv("/readings", folder.readings());
    return rig;
  }

  private static void assertNumber(NamedCsvRecord row, String column, JsonNode value) {
    assertThat(Double.parseDouble(row.getField(column))).as(column).isEqualTo(value.asDouble());
  }
}
