package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.MissingNode;

/**
 * The calendar as any program fetches it, beside the passes of the API.
 *
 * <p>Parsers: ical4j, which also writes it, and biweekly, which knows nothing of that.
 */
@LimbspanIT
class PassCalendarIT {

  private static final Pattern CULMINATION = Pattern.compile("Culmination at (\\S+Z)\\.");

  @Autowired private RestTestClient http;

  @Test
  void opensInTwoParsersWithoutWarnings() throws Exception {
    String text = calendar(RigClient.described(http, "calendar-parsers"));
    Calendar read = new CalendarBuilder().build(new StringReader(text));
    assertThat(read.validate(true).getEntries()).isEmpty();
    ICalendar other = Biweekly.parse(text).first();
    assertThat(other.validate(ICalVersion.V2_0)).isEmpty();
    assertThat(other.getEvents()).hasSameSizeAs(read.getComponents("VEVENT")).isNotEmpty();
  }

  @Test
  void tellsTheTimesOfThePassesToTheSecond() {
    RigClient rig = RigClient.described(http, "calendar-times");
    List<VEvent> events = Biweekly.parse(calendar(rig)).first().getEvents();
    Map<Instant, JsonNode> passes = passes(rig);
    assertThat(events).isNotEmpty();
    for (VEvent event : events) {
      Matcher told = CULMINATION.matcher(event.getDescription().getValue());
      assertThat(told.find()).isTrue();
      JsonNode pass = passes.getOrDefault(Instant.parse(told.group(1)), MissingNode.getInstance());
      assertThat(pass.has("culminationAt")).as("a pass culminates at " + told.group(1)).isTrue();
      assertThat(event.getDateStart().getValue().toInstant())
          .isAfterOrEqualTo(pass.path("riseAt").asString())
          .isBefore(event.getDateEnd().getValue().toInstant());
      assertThat(event.getDateEnd().getValue().toInstant())
          .isBeforeOrEqualTo(pass.path("setAt").asString());
    }
  }

  @Test
  void isServedAsACalendar() {
    RigClient rig = RigClient.described(http, "calendar-type");
    http.get()
        .uri("/api/rigs/" + rig.slug() + "/passes.ics")
        .exchange()
        .expectHeader()
        .contentType("text/calendar;charset=UTF-8");
    assertThat(rig.getAt("/api/rigs/calendar-nobody/passes.ics").status()).isEqualTo(404);
  }

  private static String calendar(RigClient rig) {
    return rig.getText("/passes.ics", "text/calendar");
  }

  private static Map<Instant, JsonNode> passes(RigClient rig) {
    Instant now = Instant.now();
    String query =
        "/passes?from=" + now.minus(Duration.ofDays(2)) + "&to=" + now.plus(Duration.ofDays(63));
    Map<Instant, JsonNode> passes = new TreeMap<>();
    for (JsonNode pass : rig.get(query).body()) {
      Instant culmination = Instant.parse(pass.path("culminationAt").asString());
      passes.put(culmination.truncatedTo(ChronoUnit.SECONDS), pass);
    }
    return passes;
  }
}
