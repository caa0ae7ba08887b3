package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** Recipients of a service as it comes: no mail server, no webhook within the house. */
@LimbspanIT
class RecipientIT {

  /** An address literal is not looked up anywhere; nothing is sent to it here. */
  private static final String PUBLIC = "https://[2a00:0:0:1::7]/hook";

  @Autowired private RestTestClient http;

  @Test
  void isToldItsSecretOnce() {
    RigClient rig = RigClient.described(http, "recipient-secret");
    Answer entered = enter(rig, PUBLIC);
    assertThat(entered.status()).isEqualTo(201);
    String secret = entered.body().path("secret").asString();
    assertThat(secret).matches("limbspan-hook-[A-Za-z0-9_-]{43}");
    JsonNode listed = rig.get("/notice-recipients").body();
    assertThat(listed).hasSize(1);
    assertThat(listed.get(0).path("address").asString()).isEqualTo(PUBLIC);
    assertThat(listed.get(0).path("notices")).isEmpty();
    assertThat(listed.toString()).doesNotContain(secret);
  }

  @Test
  void isEnteredOnceAndTakenAway() {
    RigClient rig = RigClient.described(http, "recipient-twice");
    String id = enter(rig, PUBLIC).body().path("id").asString();
    Answer again = enter(rig, PUBLIC);
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.violation("address").path("expected").asString()).contains("no other");
    RigClient stranger = RigClient.described(http, "recipient-stranger");
    assertThat(delete(stranger, id)).isEqualTo(404);
    assertThat(delete(rig, id)).isEqualTo(204);
    assertThat(delete(rig, id)).isEqualTo(404);
    assertThat(rig.get("/notice-recipients").body()).isEmpty();
    assertThat(enter(rig, PUBLIC).status()).isEqualTo(201);
  }

  @Test
  void changesWhatItIsTold() {
    RigClient rig = RigClient.described(http, "recipient-change");
    String id = enter(rig, PUBLIC).body().path("id").asString();
    Answer changed =
        rig.putJson(
            "/notice-recipients/" + id,
            """
            {"notices": ["alert-settled"], "quietFrom": "23:00", "quietTo": "06:30",
             "paused": true}""");
    assertThat(changed.status()).isEqualTo(204);
    JsonNode listed = rig.get("/notice-recipients").body().get(0);
    assertThat(listed.path("notices").toString()).isEqualTo("[\"alert-settled\"]");
    assertThat(listed.path("quietFrom").asString()).isEqualTo("23:00:00");
    assertThat(listed.path("quietTo").asString()).isEqualTo("06:30:00");
    assertThat(listed.path("paused").asBoolean()).isTrue();
    assertThat(rig.putJson("/notice-recipients/" + UUID.randomUUID(), "{}").status())
        .isEqualTo(404);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://127.0.0.1:8080/",
        "http://localhost/",
        "http://[::1]/",
        "http://[::ffff:192.168.0.1]/",
        "http://10.0.0.7/",
        "http://100.64.0.1/",
        "http://169.254.169.254/latest/meta-data",
        "http://[fd00::1]/",
        "http://[fe80::1]/",
        "http://0.0.0.0/",
        "http://224.0.0.1/"
      })
  void isNotWithinTheHouse(String address) {
    RigClient rig =
        RigClient.described(http, "recipient-" + UUID.randomUUID().toString().substring(0, 8));
    Answer refused = enter(rig, address);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.violation("address").path("expected").asString())
        .contains("public internet", "limbspan.notices.private-addresses");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"address\": \"https://[2a00::7]/\"} | channel | one of mail, webhook",
        "{\"channel\": \"pigeon\", \"address\": \"https://[2a00::7]/\"} | channel | one of mail, webhook",
        "{\"channel\": \"webhook\"} | address | a text",
        "{\"channel\": \"webhook\", \"address\": \"ftp://example.org\"} | address | https://",
        "{\"channel\": \"mail\", \"address\": \"moon@example.org\"} | channel | spring.mail.host",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"notices\": [\"all\"]} | notices | alert-raised",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"notices\": [\"test\"]} | notices | alert-raised",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"quietFrom\": \"22:00\"} | quietTo | local time",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"quietFrom\": \"24:00\", \"quietTo\": \"07:00\"} | quietFrom | local time",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"quietFrom\": \"07:00\", \"quietTo\": \"07:00\"} | quietTo | another time",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"reminderMinutes\": 4} | reminderMinutes | 5 to 720",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"reminderPlaces\": [\"east\"]} | reminderPlaces | low, high",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"silentPasses\": 61} | silentPasses | 1 to 60",
        "{\"channel\": \"webhook\", \"address\": \"https://[2a00::7]/\", \"secret\": \"mine\"} | secret | none but",
      })
  void isRefusedNamingTheField(String body, String field, String expected) {
    RigClient rig = new RigClient(http, "recipient-refused");
    if (rig.get("/notice-recipients").status() == 404) {
      RigClient.described(http, "recipient-refused");
    }
    Answer refused = rig.postJson("/notice-recipients", body);
    assertThat(refused.status()).as(body).isEqualTo(422);
    assertThat(refused.violation(field).path("expected").asString()).contains(expected);
    assertThat(rig.get("/notice-recipients").body()).isEmpty();
  }

  private static Answer enter(RigClient rig, String address) {
    return rig.postJson(
        "/notice-recipients", "{\"channel\": \"webhook\", \"address\": \"%s\"}".formatted(address));
  }

  private int delete(RigClient rig, String id) {
    return http.delete()
        .uri("/api/rigs/" + rig.slug() + "/notice-recipients/" + id)
        .exchange()
        .expectBody()
        .returnResult()
        .getStatus()
        .value();
  }
}
