package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;

/** What is told because its time has come. The rigs stand in Vienna. */
class TimedNoticesIT extends NoticeSetting {

  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  @Autowired private TimedNotices timed;
  @Autowired private Deliveries deliveries;

  @Test
  void writeAboutAMonthOnceAfterNoonOfTheNext() {
    RigClient rig = RigClient.described(http, "times-month");
    clock.moveTo(Instant.parse("2027-01-21T12:00:00Z"));
    reading(rig, "2027-01-20T20:00:00Z");
    enter(rig, mail("month@house.example", "monthly-letter", ""));
    clock.moveTo(Instant.parse("2027-02-01T10:58:00Z")); // 11:58 there
    round(rig);
    assertThat(subjects("month@house.example")).noneMatch(each -> each.contains("January 2027"));
    clock.moveTo(Instant.parse("2027-02-01T11:00:01Z"));
    round(rig);
    round(rig);
    await("mail", () -> count("month@house.example", "January 2027") == 1);
    clock.moveTo(Instant.parse("2027-02-20T08:00:00Z"));
    round(rig);
    assertThat(count("month@house.example", "January 2027")).isEqualTo(1);
    assertThat(last("month@house.example"))
        .contains("January 2027: 1 reading taken.")
        .contains("No remark waits for an answer.")
        .contains("https://moon.example.org/rigs/times-month/cycle");
    clock.moveTo(Instant.parse("2027-03-03T08:00:00Z"));
    round(rig);
    await("the next", () -> count("month@house.example", "February 2027") == 1);
    assertThat(last("month@house.example")).contains("February 2027: 0 readings taken.");
  }

  @Test
  void sayNothingOfAMonthThatWasOverBeforeSomebodyWasEntered() {
    RigClient rig = RigClient.described(http, "times-month-late");
    clock.moveTo(Instant.parse("2027-02-01T11:30:00Z"));
    assertThat(
            rig.postJson("/notice-recipients", mail("late@house.example", "monthly-letter", ""))
                .status())
        .isEqualTo(201);
    round(rig);
    clock.moveTo(Instant.parse("2027-03-01T12:00:00Z"));
    round(rig);
    await("mail", () -> count("late@house.example", "February 2027") == 1);
    assertThat(mailbox("late@house.example")).hasSize(1);
  }

  @Test
  void remindOfTheWindowsThatTheCalendarHolds() {
    RigClient rig = RigClient.described(http, "times-window");
    enter(
        rig,
        mail(
            "window@house.example",
            "window-reminder",
            ", \"reminderMinutes\": 40, \"reminderPlaces\": [\"low\"]"));
    clock.moveTo(Instant.parse("2027-01-10T12:00:00Z"));
    VEvent low = firstLow(rig, clock.instant().plus(Duration.ofHours(2)));
    Instant from = low.getDateStart().getValue().toInstant();
    clock.moveTo(from.minus(Duration.ofMinutes(42)));
    round(rig);
    assertThat(mailbox("window@house.example")).isEmpty();
    clock.moveTo(from.minus(Duration.ofMinutes(39)));
    round(rig);
    clock.moveTo(from.minus(Duration.ofMinutes(20)));
    round(rig);
    await("mail", () -> !mailbox("window@house.example").isEmpty());
    assertThat(subjects("window@house.example"))
        .containsExactly("Invented garden: Moon low from " + CLOCK.format(from.atZone(VIENNA)));
    assertThat(last("window@house.example"))
        .contains("Never point a lens or an eye at the Sun", "local rules come first");
    clock.moveTo(from.plus(Duration.ofMinutes(1)));
    round(rig);
    assertThat(mailbox("window@house.example")).as("not when it has begun").hasSize(1);
  }

  @Test
  void areNotSentWhenTheWindowIsOver() {
    RigClient rig = RigClient.described(http, "times-window-over");
    enter(
        rig,
        mail(
            "over@house.example",
            "window-reminder",
            ", \"reminderMinutes\": 40, \"quietFrom\": \"12:00\", \"quietTo\": \"11:30\""));
    clock.moveTo(Instant.parse("2027-01-10T12:00:00Z"));
    Instant from =
        firstLow(rig, clock.instant().plus(Duration.ofHours(2)))
            .getDateStart()
            .getValue()
            .toInstant();
    clock.moveTo(from.minus(Duration.ofMinutes(30)));
    timed.write();
    deliveries.deliverDue();
    JsonNode waiting = rig.get("/notice-recipients").body().get(0).path("waiting");
    assertThat(waiting.path("subject").asString()).contains("Moon low");
    clock.moveTo(Instant.parse(waiting.path("nextTryAt").asString()).plusSeconds(1));
    deliveries.deliverDue();
    await(
        "given up",
        () -> rig.get("/notice-recipients").body().get(0).path("givenUpCount").asInt() >= 1);
    assertThat(
            rig.get("/notice-recipients")
                .body()
                .get(0)
                .path("givenUp")
                .path("lastError")
                .asString())
        .isEqualTo("its time had passed");
    assertThat(mailbox("over@house.example")).isEmpty();
  }

  @Test
  void tellOnceOfEachSilence() {
    RigClient rig = RigClient.described(http, "times-silent");
    clock.moveTo(Instant.parse("2027-01-12T12:00:00Z")); // the Moon waxes, five days after new
    assertThat(
            rig.postJson(
                    "/notice-recipients",
                    mail("silent@house.example", "rig-silent", ", \"silentPasses\": 3"))
                .status())
        .isEqualTo(201);
    clock.moveTo(Instant.parse("2027-01-14T12:00:00Z"));
    round(rig);
    assertThat(mailbox("silent@house.example")).as("two passes").isEmpty();
    clock.moveTo(Instant.parse("2027-01-16T12:00:00Z"));
    round(rig);
    clock.moveTo(Instant.parse("2027-01-22T12:00:00Z"));
    round(rig);
    await("mail", () -> !mailbox("silent@house.example").isEmpty());
    assertThat(subjects("silent@house.example"))
        .containsExactly("Invented garden: no reading for 3 passes");
    assertThat(last("silent@house.example")).contains("There is none at all yet.");
    reading(rig, "2027-01-21T22:00:00Z");
    clock.moveTo(Instant.parse("2027-01-23T12:00:00Z"));
    round(rig);
    assertThat(mailbox("silent@house.example")).as("a reading came").hasSize(1);
    clock.moveTo(Instant.parse("2027-01-27T12:00:00Z"));
    round(rig);
    await("another silence", () -> mailbox("silent@house.example").size() == 2);
    assertThat(last("silent@house.example")).contains("2027-01-21T22:00:00Z");
  }

  @Test
  void areAFeedToo() {
    RigClient rig = RigClient.described(http, "times-feed");
    String feed =
        new String(
            http.get()
                .uri("/rigs/" + rig.slug() + "/alerts.atom")
                .exchange()
                .expectStatus()
                .isOk()
                .expectHeader()
                .contentType("application/atom+xml;charset=UTF-8")
                .expectBody()
                .returnResult()
                .getResponseBodyContent(),
            StandardCharsets.UTF_8);
    assertThat(feed).contains("https://moon.example.org/rigs/times-feed/alerts.atom");
    assertThat(rig.getAt("/rigs/times-nobody/alerts.atom").status()).isEqualTo(404);
  }

  /** Until nothing is in hand: a clock that leaps would end the lease of what is being sent. */
  private void round(RigClient rig) {
    timed.write();
    await(
        "nothing waits",
        () -> {
          deliveries.deliverDue();
          return rig.get("/notice-recipients").body().get(0).path("waitingCount").asInt() == 0;
        });
  }

  private static void reading(RigClient rig, String takenAt) {
    Answer answer =
        rig.postJson(
            "/readings",
            """
            {"takenAt": "%s", "axis": "horizontal", "diameterArcmin": 31.2,
             "uncertaintyArcmin": 0.05}"""
                .formatted(takenAt));
    assertThat(answer.status()).as(answer.toString()).isBetween(200, 201);
  }

  private static VEvent firstLow(RigClient rig, Instant after) {
    return Biweekly.parse(rig.getText("/passes.ics", "text/calendar")).first().getEvents().stream()
        .filter(event -> event.getSummary().getValue().startsWith("Moon low"))
        .filter(event -> event.getDateStart().getValue().toInstant().isAfter(after))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> subjects(String address) {
    return mailbox(address).stream().map(NoticeSetting::subject).toList();
  }

  private static long count(String address, String word) {
    return subjects(address).stream().filter(each -> each.contains(word)).count();
  }

  private static String last(String address) {
    List<MimeMessage> all = mailbox(address);
    try {
      return String.valueOf(all.get(all.size() - 1).getContent());
    } catch (IOException | MessagingException e) {
      throw new AssertionError(e);
    }
  }

  private static String mail(String address, String notice, String more) {
    return "{\"channel\": \"mail\", \"address\": \"%s\", \"notices\": [\"%s\"]%s}"
        .formatted(address, notice, more);
  }
}
