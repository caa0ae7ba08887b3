package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** Corrections add to the ledger; nothing in it is overwritten, and old files do not undo them. */
@LimbspanIT
class CorrectionIT {

  @Autowired private RestTestClient http;
  @Autowired private JdbcClient jdbc;

  @Test
  void refusesAnotherDiameterForAHeldInstantAndAxisUnlessItSupersedes() {
    RigClient rig = RigClient.described(http, "correct-supersede");
    assertThat(stored(rig.postJson("/readings", reading(1760.5, "")))).isEqualTo(1);

    Answer conflict = rig.postJson("/readings", reading(1761, ""));
    assertThat(conflict.status()).isEqualTo(409);
    assertThat(conflict.violation("diameterPx").path("value").asString()).isEqualTo("1761.0");
    assertThat(conflict.violation("diameterPx").path("expected").asString()).contains("1760.5");
    assertThat(diameters(rig)).containsExactly(1760.5);

    Answer superseded = rig.postJson("/readings", reading(1761, ", \"supersedes\": true"));
    assertThat(stored(superseded)).isEqualTo(1);
    assertThat(diameters(rig)).containsExactly(1761);
    assertThat(rows(rig)).as("both stay in the ledger").isEqualTo(2);

    // The same again, in either form, and the old file again: all of it is held.
    assertThat(held(rig.postJson("/readings", reading(1761, ", \"supersedes\": true"))))
        .isEqualTo(1);
    assertThat(held(rig.postJson("/readings", reading(1761, "")))).isEqualTo(1);
    assertThat(held(rig.postJson("/readings", reading(1760.5, "")))).isEqualTo(1);
    assertThat(diameters(rig)).containsExactly(1761);
    assertThat(rows(rig)).isEqualTo(2);
  }

  @Test
  void supersedesByCsvParameter() {
    RigClient rig = RigClient.described(http, "correct-csv");
    String header = "taken_at,axis,diameter_px,uncertainty_px\n";
    rig.postCsv("/readings", header + "2026-02-01T21:14:00Z,horizontal,1760.5,1.6\n");
    String corrected = header + "2026-02-01T22:14:00+01:00,horizontal,1761,1.6\n";
    Answer conflict = rig.postCsv("/readings", corrected);
    assertThat(conflict.status()).isEqualTo(409);
    assertThat(conflict.violation("diameterPx").path("line").asInt()).isEqualTo(2);
    assertThat(stored(rig.postCsv("/readings?supersede=true", corrected))).isEqualTo(1);
    assertThat(held(rig.postCsv("/readings?supersede=true", corrected))).isEqualTo(1);
    assertThat(diameters(rig)).containsExactly(1761);
  }

  @Test
  void takesTheSameInstantAlongAnotherAxisForAnotherReading() {
    RigClient rig = RigClient.described(http, "correct-axes");
    rig.postJson("/readings", reading(1760.5, ""));
    Answer vertical =
        rig.postJson("/readings", reading(1750, "").replace("horizontal", "vertical"));
    assertThat(stored(vertical)).isEqualTo(1);
    assertThat(diameters(rig)).containsExactly(1760.5, 1750);
  }

  @Test
  void withdrawsAReadingForGoodUntilItIsSupersededExpressly() {
    RigClient rig = RigClient.described(http, "correct-withdraw");
    rig.postJson("/readings", reading(1760.5, ""));
    long id = firstId(rig);

    assertThat(rig.postJson("/readings/" + id + "/withdraw", "{}").status()).isEqualTo(422);
    Answer withdrawn =
        rig.postJson("/readings/" + id + "/withdraw", "{\"reason\": \"wrong star\"}");
    assertThat(withdrawn.status()).isEqualTo(204);
    assertThat(diameters(rig)).isEmpty();
    assertThat(rig.postJson("/readings/" + id + "/withdraw", "{\"reason\": \"x\"}").status())
        .isEqualTo(409);

    assertThat(held(rig.postJson("/readings", reading(1760.5, "")))).isEqualTo(1);
    assertThat(diameters(rig)).as("sending the file again does not bring it back").isEmpty();
    assertThat(stored(rig.postJson("/readings", reading(1762, "")))).isEqualTo(1);
    assertThat(diameters(rig)).containsExactly(1762);
    assertThat(rows(rig)).isEqualTo(3);
  }

  @Test
  void relabelsTheAxisOfAReading() {
    RigClient rig = RigClient.described(http, "correct-relabel");
    rig.postJson("/readings", reading(1760.5, ", \"note\": \"tilted\""));
    long id = firstId(rig);
    Answer relabelled =
        rig.postJson(
            "/readings/" + id + "/relabel",
            "{\"axis\": \"vertical\", \"reason\": \"camera stood upright\"}");
    assertThat(relabelled.status()).isEqualTo(200);
    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.size()).isEqualTo(1);
    assertThat(readings.get(0).path("axis").asString()).isEqualTo("vertical");
    assertThat(readings.get(0).path("note").asString()).isEqualTo("tilted");
    assertThat(readings.get(0).path("id").asLong())
        .isEqualTo(relabelled.body().path("id").asLong());

    assertThat(held(rig.postJson("/readings", reading(1760.5, "")))).isEqualTo(1);
    assertThat(rig.get("/readings").body().path("readings").size()).isEqualTo(1);
    assertThat(
            rig.postJson("/readings/" + id + "/relabel", "{\"axis\": \"up\", \"reason\": \"x\"}")
                .status())
        .isEqualTo(422);
    assertThat(
            rig.postJson(
                    "/readings/987654321/relabel", "{\"axis\": \"vertical\", \"reason\": \"x\"}")
                .status())
        .isEqualTo(404);
  }

  @Test
  void keepsTheGoodLinesOfABatchIfAskedTo() {
    RigClient rig = RigClient.described(http, "correct-keep-good");
    rig.postJson("/readings", reading(1760.5, ""));
    String csv =
        """
        taken_at,axis,diameter_px,uncertainty_px
        2026-02-01T21:14:00Z,horizontal,1700,1.6
        2026-02-01T21:20:00Z,horizontal,1761,1.6
        2026-02-01T21:30:00Z,sideways,1761,1.6
        2026-02-01T21:40:00Z,horizontal,1762,1.6
        2026-02-01T21:40:00Z,horizontal,1762,1.6
        """;
    assertThat(rig.postCsv("/readings", csv).status()).isEqualTo(422);
    assertThat(diameters(rig)).containsExactly(1760.5);

    Answer kept = rig.postCsv("/readings?keepGood=true", csv);
    assertThat(kept.status()).isEqualTo(200);
    JsonNode report = kept.body();
    assertThat(report.path("received").asInt()).isEqualTo(5);
    assertThat(report.path("stored").asInt()).isEqualTo(2);
    assertThat(report.path("alreadyHeld").asInt()).isEqualTo(1);
    assertThat(report.path("rejected").size()).isEqualTo(2);
    assertThat(report.path("rejected").get(0).path("line").asInt()).isEqualTo(2);
    assertThat(report.path("rejected").get(1).path("line").asInt()).isEqualTo(4);
    assertThat(report.path("rejected").get(1).path("field").asString()).isEqualTo("axis");
    assertThat(diameters(rig)).containsExactly(1760.5, 1761, 1762);
  }

  @Test
  void refusesABatchThatContradictsItself() {
    RigClient rig = RigClient.described(http, "correct-contradiction");
    String csv =
        """
        taken_at,axis,diameter_px,uncertainty_px
        2026-02-01T21:14:00Z,horizontal,1700,1.6
        2026-02-01T21:14:00Z,horizontal,1701,1.6
        """;
    Answer answer = rig.postCsv("/readings", csv);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body().path("violations").size()).isEqualTo(2);
    Answer kept = rig.postCsv("/readings?keepGood=true", csv);
    assertThat(kept.body().path("stored").asInt()).isZero();
    assertThat(kept.body().path("rejected").size()).isEqualTo(2);
  }

  private static String reading(double diameterPx, String more) {
    return """
    {"takenAt": "2026-02-01T21:14:00Z", "axis": "horizontal", "diameterPx": %s,
     "uncertaintyPx": 1.6%s}"""
        .formatted(diameterPx, more);
  }

  private static int stored(Answer answer) {
    assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
    return answer.body().path("stored").asInt();
  }

  private static int held(Answer answer) {
    assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
    return answer.body().path("alreadyHeld").asInt();
  }

  private static double[] diameters(RigClient rig) {
    return rig.get("/readings")
        .body()
        .path("readings")
        .valueStream()
        .mapToDouble(each -> each.path("diameterPx").asDouble())
        .toArray();
  }

  private static long firstId(RigClient rig) {
    return rig.get("/readings").body().path("readings").get(0).path("id").asLong();
  }

  private long rows(RigClient rig) {
    return jdbc.sql(
            "select count(*) from reading where rig_id = (select id from rig where slug = :slug)")
        .param("slug", rig.slug())
        .query(Long.class)
        .single();
  }
}
