package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.notice.FlakyReceiver.Mood;
import org.limbspan.testing.Answer;
import org.limbspan.testing.RigClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Addresses that are taken, and how they are tried out. */
class RecipientAddressIT extends NoticeSetting {

  private static final String MAIL = "{\"channel\": \"mail\", \"address\": %s}";

  @ParameterizedTest
  @ValueSource(
      strings = {
        "moon",
        "moon@",
        "@example.org",
        "moon@example.org, sun@example.org",
        "Moon <moon@example.org>",
        "moon@example.org\nBcc: sun@example.org",
        "moon@example.org\r\nBcc: sun@example.org",
        "moon sun@example.org",
        "a@b@example.org",
        "moon@example.org]",
        "moon@[192.0.2]"
      })
  void isOneMailAddressAndNothingBeside(String address) {
    RigClient rig = new RigClient(http, "recipient-mail");
    if (rig.get("/notice-recipients").status() == 404) {
      RigClient.described(http, "recipient-mail");
    }
    Answer refused =
        rig.postJson(
            "/notice-recipients", MAIL.formatted(new JsonMapper().writeValueAsString(address)));
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.violation("address").path("expected").asString())
        .contains("one mail address");
  }

  @Test
  void isTriedOutByATestThatWaitsForNothing() {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      RigClient rig = RigClient.described(http, "recipient-test");
      receiver.beInMoods(List.of(Mood.FAILS, Mood.REDIRECTS, Mood.TAKES));
      String id =
          enter(
                  rig,
                  "{\"channel\": \"webhook\", \"address\": \"%s\"}".formatted(receiver.address()))
              .path("id")
              .asString();
      assertThat(test(rig, id).path("lastError").asString()).isEqualTo("answered 500");
      assertThat(test(rig, id).path("lastError").asString())
          .isEqualTo("answered 307; redirects are not followed");
      JsonNode third = test(rig, id);
      assertThat(third.has("deliveredAt")).isTrue();
      assertThat(third.path("kind").asString()).isEqualTo("test");
      assertThat(receiver.arrivals()).hasSize(3);
      assertThat(rig.get("/notice-recipients").body().get(0).path("waitingCount").asInt())
          .as("a test is tried once")
          .isZero();
    }
  }

  @Test
  void isTriedOutByMail() {
    RigClient rig = RigClient.described(http, "recipient-test-mail");
    String id = enter(rig, MAIL.formatted("\"tried@house.example\"")).path("id").asString();
    assertThat(test(rig, id).has("deliveredAt")).isTrue();
    assertThat(subject(mailbox("tried@house.example").get(0))).isEqualTo("Invented garden: a test");
  }

  private static JsonNode test(RigClient rig, String id) {
    Answer answer = rig.postJson("/notice-recipients/" + id + "/test", "{}");
    assertThat(answer.status()).isEqualTo(200);
    return answer.body();
  }
}
