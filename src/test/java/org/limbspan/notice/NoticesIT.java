package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.mail.internet.MimeMessage;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.limbspan.notice.FlakyReceiver.Arrival;
import org.limbspan.notice.FlakyReceiver.Mood;
import org.limbspan.rig.Rigs;
import org.limbspan.testing.Judged;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertRaised;
import org.limbspan.watch.AlertSettled;
import org.limbspan.watch.AlertWithdrawn;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What is told, to whom, how often and in which order. */
class NoticesIT extends NoticeSetting {

  private static final JsonMapper JSON = new JsonMapper();

  @Autowired private Rigs rigs;
  @Autowired private Deliveries deliveries;
  @Autowired private Outbox outbox;
  @Autowired private ApplicationEventPublisher events;
  @Autowired private TransactionTemplate transaction;

  @Test
  void tellByMailAndWebhookThatAnAlertIsRaisedAndThenSettled() throws Exception {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      ReferenceFolder folder = new ReferenceFolder("step-0.5");
      RigClient rig = folder.describe(http, "notice-whole-way");
      enter(rig, mail("whole-way@house.example", "alert-raised", "alert-settled"));
      enter(rig, webhook(receiver, "alert-raised", "alert-settled"));

      assertThat(rig.postCsv("/readings", folder.readings()).status()).isEqualTo(200);
      JsonNode alert = Judged.get(rig, "/alerts").path("alerts").get(0);
      await("raised", () -> receiver.taken().size() == 1);
      rig.postJson(
          "/alerts/" + alert.path("id").asString() + "/answer",
          "{\"cause\": \"zoom-moved\", \"changedAt\": \"2024-06-20T15:00:00+02:00\"}");
      Judged.get(rig, "/alerts");
      await("settled", () -> receiver.taken().size() == 2);
      await("mail", () -> mailbox("whole-way@house.example").size() == 2);

      List<JsonNode> told = receiver.taken().stream().map(JSON::readTree).toList();
      assertThat(told)
          .extracting(each -> each.path("kind").asString())
          .containsExactly("alert-raised", "alert-settled");
      assertThat(told.get(0).path("alert").path("id")).isEqualTo(alert.path("id"));
      assertThat(told.get(0).path("rig").path("slug").asString()).isEqualTo("notice-whole-way");
      assertThat(told.get(0).path("page").asString())
          .isEqualTo("https://moon.example.org/rigs/notice-whole-way/alerts");
      assertThat(told.get(1).path("alert").path("state").asString()).isEqualTo("settled");
      MimeMessage first = mailbox("whole-way@house.example").get(0);
      String what = alert.path("words").path("what").asString();
      assertThat(subject(first)).contains(what);
      assertThat(subject(mailbox("whole-way@house.example").get(1))).contains("Settled: " + what);
      assertThat(String.valueOf(first.getContent()))
          .contains(alert.path("words").path("howMuch").asString())
          .contains("https://moon.example.org/rigs/notice-whole-way/alerts");
    }
  }

  @Test
  void carryTheirIdInTheHeadOfAMail() throws Exception {
    RigClient rig = RigClient.described(http, "notice-mail-head");
    enter(rig, mail("head@house.example", "alert-raised"));
    publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
    await("mail", () -> mailbox("head@house.example").size() == 1);
    MimeMessage mail = mailbox("head@house.example").get(0);
    String id = mail.getHeader("Limbspan-Notice", null);
    assertThat(UUID.fromString(id).version()).as("made of names, RFC 9562").isEqualTo(3);
    assertThat(mail.getMessageID()).isEqualTo("<" + id + "@garden.example>");
    assertThat(mail.getHeader("Auto-Submitted", null)).isEqualTo("auto-generated");
    assertThat(mail.getFrom()[0].toString()).isEqualTo("limbspan@garden.example");
    assertThat(mail.getContentType()).startsWith("text/plain");
  }

  @Test
  void arriveOnceAndInOrderAtAFlakyReceiverThatKnowsTheirIds() {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      RigClient rig = RigClient.described(http, "notice-flaky");
      String secret =
          enter(rig, webhook(receiver, "alert-raised", "alert-settled")).path("secret").asString();
      List<Mood> moods =
          new ArrayList<>(
              List.of(
                  Mood.FAILS,
                  Mood.HANGS,
                  Mood.DROPS,
                  Mood.TAKES,
                  Mood.DROPS,
                  Mood.REDIRECTS,
                  Mood.FAILS,
                  Mood.TAKES,
                  Mood.HANGS));
      Collections.shuffle(moods, new Random(20_261_127));
      receiver.beInMoods(moods);
      List<String> expected = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        publish(new AlertRaised(id(rig), InventedAlerts.alert(i)));
        publish(new AlertSettled(id(rig), InventedAlerts.alert(i)));
        expected.add("alert-raised Invented garden: Invented step " + i + ".");
        expected.add("alert-settled Invented garden: Settled: Invented step " + i + ".");
      }
      deliverAll(rig);

      assertThat(receiver.taken().stream().map(NoticesIT::kindAndSubject))
          .containsExactlyElementsOf(expected);
      assertThat(receiver.arrivals()).as("at least once").hasSizeGreaterThan(expected.size());
      assertThat(receiver.mostAtOnce()).isLessThanOrEqualTo(2); // one hanging, one anew
      for (Arrival arrival : receiver.arrivals()) {
        assertThat(arrival.signature())
            .isEqualTo(Signature.of(secret, Long.parseLong(arrival.timestamp()), arrival.body()));
        assertThat(JSON.readTree(arrival.body()).path("id").asString()).isEqualTo(arrival.id());
      }
    }
  }

  @Test
  void areNeverInTwoHandsAtOnce() throws Exception {
    try (FlakyReceiver one = new FlakyReceiver();
        FlakyReceiver two = new FlakyReceiver()) {
      one.beSlow(15);
      two.beSlow(5);
      RigClient rig = RigClient.described(http, "notice-hands");
      enter(rig, webhook(one, "alert-raised"));
      enter(rig, webhook(two, "alert-raised"));
      transaction.executeWithoutResult(
          status ->
              IntStream.range(0, 20)
                  .forEach(
                      i -> events.publishEvent(new AlertRaised(id(rig), InventedAlerts.alert(i)))));
      ExecutorService hands = Executors.newFixedThreadPool(4);
      CountDownLatch start = new CountDownLatch(1);
      for (int i = 0; i < 4; i++) {
        var unused =
            hands.submit(
                () -> {
                  start.await();
                  deliverAll(rig);
                  return null;
                });
      }
      start.countDown();
      hands.shutdown();
      assertThat(hands.awaitTermination(60, TimeUnit.SECONDS)).isTrue();
      for (FlakyReceiver receiver : List.of(one, two)) {
        assertThat(receiver.arrivals()).as("each once, not only in the end").hasSize(20);
        assertThat(receiver.taken().stream().map(NoticesIT::kindAndSubject))
            .containsExactlyElementsOf(
                IntStream.range(0, 20)
                    .mapToObj(i -> "alert-raised Invented garden: Invented step " + i + ".")
                    .toList());
        assertThat(receiver.mostAtOnce()).isEqualTo(1);
      }
    }
  }

  @Test
  void areFreeAgainWhenTheServiceDiedWithOneInHand() {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      RigClient rig = RigClient.described(http, "notice-lease");
      enter(rig, webhook(receiver, "alert-raised"));
      receiver.beInMoods(List.of(Mood.FAILS));
      publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
      await("a first try", () -> waiting(rig).path("attempts").asInt() == 1);
      clock.advance(Duration.ofHours(1));
      Instant now = clock.instant();
      Notice dead = outbox.claim(now, now.plus(Deliveries.LEASE)).orElseThrow();
      deliveries.deliverDue();
      assertThat(receiver.taken()).isEmpty();
      clock.advance(Deliveries.LEASE.plusSeconds(1));
      deliveries.deliverDue();
      assertThat(receiver.taken()).hasSize(1);
      outbox.failed(dead, "told by the dead", now);
      assertThat(stand(rig).path("delivered").path("id").asString())
          .as("who lost the lease changes nothing")
          .isEqualTo(dead.id().toString());
    }
  }

  @Test
  void areWrittenOnceHoweverOftenAnAlertIsFound() {
    RigClient rig = RigClient.described(http, "notice-again");
    enter(rig, mail("again@house.example", "alert-raised"));
    for (int i = 0; i < 3; i++) {
      publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
    }
    publish(new AlertRaised(id(rig), InventedAlerts.alert(2)));
    await("mail", () -> mailbox("again@house.example").size() == 2);
    assertThat(mailbox("again@house.example"))
        .extracting(NoticeSetting::subject)
        .containsExactly("Invented garden: Invented step 1.", "Invented garden: Invented step 2.");
  }

  @Test
  void areNotOfWhatWasRolledBack() {
    RigClient rig = RigClient.described(http, "notice-rolled-back");
    enter(rig, mail("rolled-back@house.example", "alert-raised"));
    transaction.executeWithoutResult(
        status -> {
          events.publishEvent(new AlertRaised(id(rig), InventedAlerts.alert(1)));
          status.setRollbackOnly();
        });
    publish(new AlertRaised(id(rig), InventedAlerts.alert(2)));
    await("mail", () -> mailbox("rolled-back@house.example").size() == 1);
    assertThat(subject(mailbox("rolled-back@house.example").get(0))).endsWith("step 2.");
  }

  @Test
  void goToNobodyByThemselves() {
    RigClient rig = RigClient.described(http, "notice-nobody");
    RigClient other = RigClient.described(http, "notice-somebody");
    enter(rig, "{\"channel\": \"mail\", \"address\": \"nobody@house.example\"}");
    enter(rig, mail("settled-only@house.example", "alert-settled"));
    enter(other, mail("somebody@house.example", "alert-raised"));
    publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
    publish(new AlertRaised(id(other), InventedAlerts.alert(1)));
    await("mail", () -> mailbox("somebody@house.example").size() == 1);
    assertThat(mailbox("nobody@house.example")).isEmpty();
    assertThat(mailbox("settled-only@house.example")).isEmpty();
  }

  @Test
  void areNotOfWhatIsOlderThanTheirRecipient() {
    RigClient rig = RigClient.described(http, "notice-old");
    assertThat(
            rig.postJson("/notice-recipients", mail("old@house.example", "alert-raised")).status())
        .isEqualTo(201);
    Instant now = Instant.now();
    publish(new AlertRaised(id(rig), InventedAlerts.alert(1, now.minus(Duration.ofDays(400)))));
    publish(new AlertRaised(id(rig), InventedAlerts.alert(2, now.plus(Duration.ofHours(1)))));
    await("mail", () -> mailbox("old@house.example").size() == 1);
    assertThat(subject(mailbox("old@house.example").get(0))).endsWith("step 2.");
  }

  @Test
  void tellThatAnAlertIsTakenBackOnlyToWhoWasToldOfIt() {
    RigClient rig = RigClient.described(http, "notice-back");
    enter(rig, mail("told@house.example", "alert-raised"));
    publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
    enter(rig, mail("not-told@house.example", "alert-raised"));
    publish(new AlertWithdrawn(id(rig), withAnotherId(InventedAlerts.alert(1))));
    await("mail", () -> mailbox("told@house.example").size() == 2);
    assertThat(subject(mailbox("told@house.example").get(1)))
        .isEqualTo("Invented garden: Taken back: Invented step 1.");
    assertThat(mailbox("not-told@house.example")).isEmpty();
  }

  @Test
  void waitThroughTheQuietTimeInOrder() {
    RigClient rig = RigClient.described(http, "notice-quiet"); // in Vienna
    enter(
        rig,
        """
        {"channel": "mail", "address": "quiet@house.example", "notices": ["alert-raised"],
         "quietFrom": "22:00", "quietTo": "07:00"}""");
    clock.moveTo(Instant.parse("2027-01-10T22:30:00Z")); // 23:30 there
    publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
    publish(new AlertRaised(id(rig), InventedAlerts.alert(2)));
    deliveries.deliverDue();
    assertThat(mailbox("quiet@house.example")).isEmpty();
    assertThat(waiting(rig).path("nextTryAt").asString()).isEqualTo("2027-01-11T06:00:00Z");
    clock.moveTo(Instant.parse("2027-01-11T06:00:01Z"));
    deliveries.deliverDue();
    await("mail", () -> mailbox("quiet@house.example").size() == 2);
    assertThat(mailbox("quiet@house.example"))
        .extracting(NoticeSetting::subject)
        .containsExactly("Invented garden: Invented step 1.", "Invented garden: Invented step 2.");
  }

  @Test
  void areNotTriedAgainInTheQuietTime() {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      RigClient rig = RigClient.described(http, "notice-quiet-again");
      receiver.beInMoods(List.of(Mood.FAILS));
      clock.moveTo(Instant.parse("2027-01-12T20:59:40Z")); // 21:59:40 there
      assertThat(
              rig.postJson(
                      "/notice-recipients",
                      """
                      {"channel": "webhook", "address": "%s", "notices": ["alert-raised"],
                       "quietFrom": "22:00", "quietTo": "07:00"}"""
                          .formatted(receiver.address()))
                  .status())
          .isEqualTo(201);
      publish(
          new AlertRaised(id(rig), InventedAlerts.alert(1, Instant.parse("2027-01-13T00:00:00Z"))));
      await("a try", () -> waiting(rig).path("attempts").asInt() == 1);
      assertThat(waiting(rig).path("nextTryAt").asString()).isEqualTo("2027-01-13T06:00:00Z");
    }
  }

  @Test
  void areGivenUpInTheEndAndLetTheNextGoOn() {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      RigClient rig = RigClient.described(http, "notice-given-up");
      enter(rig, webhook(receiver, "alert-raised"));
      receiver.beInMoods(Collections.nCopies(17, Mood.FAILS));
      publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
      await("a first try", () -> waiting(rig).path("attempts").asInt() == 1);
      assertThat(stand(rig).path("failing").asBoolean()).isTrue();
      assertThat(waiting(rig).path("lastError").asString()).isEqualTo("answered 500");
      clock.advance(Duration.ofDays(2));
      publish(new AlertRaised(id(rig), InventedAlerts.alert(2)));
      deliverAll(rig);
      JsonNode stand = stand(rig);
      assertThat(stand.path("givenUpCount").asInt()).isEqualTo(1);
      assertThat(stand.path("givenUp").path("subject").asString()).endsWith("step 1.");
      assertThat(stand.path("givenUp").path("lastError").asString()).isEqualTo("answered 500");
      assertThat(receiver.taken().stream().map(NoticesIT::kindAndSubject))
          .containsExactly("alert-raised Invented garden: Invented step 2.");
      assertThat(stand.path("failing").asBoolean()).isFalse();
    }
  }

  @Test
  void areNeitherWrittenNorSentWhileTheirRecipientIsPaused() {
    RigClient rig = RigClient.described(http, "notice-paused");
    String id = enter(rig, mail("paused@house.example", "alert-raised")).path("id").asString();
    String change = "{\"notices\": [\"alert-raised\"], \"paused\": %s}";
    rig.putJson("/notice-recipients/" + id, change.formatted("true"));
    publish(new AlertRaised(id(rig), InventedAlerts.alert(1)));
    rig.putJson("/notice-recipients/" + id, change.formatted("false"));
    publish(new AlertRaised(id(rig), InventedAlerts.alert(2)));
    await("mail", () -> mailbox("paused@house.example").size() == 1);
    assertThat(subject(mailbox("paused@house.example").get(0))).endsWith("step 2.");
  }

  private void deliverAll(RigClient rig) {
    await(
        "everything",
        () -> {
          deliveries.deliverDue();
          boolean waits = false;
          for (JsonNode each : rig.get("/notice-recipients").body()) {
            waits |= each.has("waiting");
            String next = each.path("waiting").path("nextTryAt").asString("");
            if (!next.isEmpty() && Instant.parse(next).isAfter(clock.instant())) {
              clock.moveTo(Instant.parse(next));
            }
          }
          return !waits;
        });
  }

  private static JsonNode stand(RigClient rig) {
    return rig.get("/notice-recipients").body().get(0);
  }

  private static JsonNode waiting(RigClient rig) {
    return stand(rig).path("waiting");
  }

  private void publish(Object event) {
    transaction.executeWithoutResult(status -> events.publishEvent(event));
  }

  private long id(RigClient rig) {
    return rigs.find(rig.slug()).id();
  }

  private static String kindAndSubject(String body) {
    JsonNode notice = JSON.readTree(body);
    return notice.path("kind").asString() + " " + notice.path("subject").asString();
  }

  private static Alert withAnotherId(Alert alert) {
    return new Alert(
        UUID.randomUUID(),
        alert.kind(),
        alert.state(),
        alert.setup(),
        alert.onsetAt(),
        alert.onsetFrom(),
        alert.onsetTo(),
        alert.until(),
        alert.raisedAt(),
        alert.settledAt(),
        alert.evidenceAt(),
        alert.sizePercent(),
        alert.uncertaintyPercent(),
        alert.probability(),
        alert.explanation(),
        alert.words(),
        alert.likelyCauses(),
        alert.readings(),
        alert.answers());
  }

  private static String mail(String address, String... notices) {
    return recipient("mail", address, notices);
  }

  private static String webhook(FlakyReceiver receiver, String... notices) {
    return recipient("webhook", receiver.address(), notices);
  }

  private static String recipient(String channel, String address, String... notices) {
    return "{\"channel\": \"%s\", \"address\": \"%s\", \"notices\": [\"%s\"]}"
        .formatted(channel, address, String.join("\", \"", notices));
  }
}
