package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import org.junit.jupiter.api.Test;
import org.limbspan.rig.Outlooks;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Pass;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/** The page and the calendar of what lies ahead, for an invented rig. */
class TonightTest {

  private static final Instant NOW = Instant.parse("2026-11-25T18:30:00Z");
  private static final Rig RIG = rig(new Site(48.2, 16.4, 170));

  @Test
  void drawsThePassThatGoesOn() {
    TonightSheet sheet = sheet(RIG, NOW);
    assertThat(sheet.isDrawn()).isTrue();
    assertThat(sheet.arc().path()).startsWith("M").doesNotContain("NaN");
    assertThat(sheet.arc().directions())
        .extracting(TonightArc.Rule::word)
        .contains("0\u00b0", "south");
    assertThat(sheet.events())
        .extracting(TonightSheet.Event::name)
        .containsExactly("rise", "culmination", "set");
    assertThat(sheet.nights()).isNotEmpty();
  }

  @Test
  void shadesTheTwilightsInOrderWithoutGaps() {
    List<TonightArc.Band> bands = sheet(RIG, NOW).arc().bands();
    for (int i = 1; i < bands.size(); i++) {
      assertThat(bands.get(i).x())
          .isCloseTo(bands.get(i - 1).x() + bands.get(i - 1).width(), within(0.11));
    }
    assertThat(bands).extracting(TonightArc.Band::light).contains("night", "nautical-twilight");
  }

  @Test
  void saysInWordsThatNothingIsOfferedNearTheSun() {
    TonightSheet sheet = sheet(RIG, Instant.parse("2024-04-08T06:00:00Z"));
    assertThat(sheet.windowWords()).anyMatch(words -> words.contains("less than 20\u00b0"));
  }

  @Test
  void saysThatTheMoonDoesNotRiseAtTheStartOfItsFortnightBelowThePolarHorizon() {
    Rig polar = rig(new Site(89, 0, 0));
    TonightSheet sheet = sheet(polar, Instant.parse("2024-12-26T00:00:00Z"));
    assertThat(sheet.opening().get(0)).startsWith("The Moon is down.");
  }

  @Test
  void saysThatTheEphemerisEnds() {
    TonightSheet sheet = sheet(RIG, SkyFixture.sky().ephemerisTo());
    assertThat(sheet.isDrawn()).isFalse();
    assertThat(sheet.opening().get(0)).contains("ephemeris");
  }

  @Test
  void writesACalendarThatTwoParsersTakeWithoutWarnings() throws Exception {
    String text = calendar(NOW);
    Calendar read = new CalendarBuilder().build(new StringReader(text));
    assertThat(read.validate(true).getEntries()).isEmpty();
    ICalendar other = Biweekly.parse(text).first();
    assertThat(other.validate(ICalVersion.V2_0)).isEmpty();
    assertThat(other.getEvents()).hasSameSizeAs(read.getComponents("VEVENT")).isNotEmpty();
    assertThat(text.lines()).allSatisfy(line -> assertThat(bytes(line)).isLessThanOrEqualTo(75));
  }

  @Test
  void givesTheWindowsAndTheCulminationsToTheSecond() {
    List<VEvent> events = Biweekly.parse(calendar(NOW)).first().getEvents();
    TonightFacts facts = facts(RIG, NOW);
    Set<Instant> edges =
        facts.dark().stream()
            .flatMap(plan -> plan.high().stream())
            .map(window -> window.from())
            .collect(Collectors.toSet());
    assertThat(events)
        .extracting(event -> event.getDateStart().getValue().toInstant())
        .containsAll(edges);
    List<Pass> passes =
        SkyFixture.sky()
            .passes(NOW.minus(Duration.ofDays(2)), NOW.plus(Duration.ofDays(61)), RIG.site());
    Set<String> culminations =
        passes.stream()
            .map(pass -> "Culmination at " + pass.culminationAt().truncatedTo(ChronoUnit.SECONDS))
            .collect(Collectors.toSet());
    assertThat(events)
        .allSatisfy(
            event ->
                assertThat(culminations)
                    .anyMatch(c -> event.getDescription().getValue().contains(c)));
  }

  @Test
  void keepsTheUidOfAWindowFromDayToDay() {
    Set<String> today = uids(NOW);
    Set<String> tomorrow = uids(NOW.plus(Duration.ofDays(3)));
    assertThat(tomorrow.stream().filter(today::contains).count()).isGreaterThan(20);
    assertThat(today).hasSize(Biweekly.parse(calendar(NOW)).first().getEvents().size());
  }

  @Test
  void offersInTheCalendarOnlyDarkPairsAndWorthwhilePasses() {
    assertThat(facts(RIG, NOW).dark()).isNotEmpty().allMatch(ShootingPlan::isDarkPair);
  }

  private static int bytes(String line) {
    return line.getBytes(StandardCharsets.UTF_8).length;
  }

  private static Set<String> uids(Instant now) {
    return Biweekly.parse(calendar(now)).first().getEvents().stream()
        .map(event -> event.getUid().getValue())
        .collect(Collectors.toSet());
  }

  private static String calendar(Instant now) {
    try {
      return new String(PassCalendar.of(facts(RIG, now)), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static TonightSheet sheet(Rig rig, Instant now) {
    return TonightSheets.of(facts(rig, now));
  }

  private static TonightFacts facts(Rig rig, Instant now) {
    return new TonightReader(SkyFixture.sky(), new Outlooks(SkyFixture.sky()))
        .read(rig, Optional.empty(), now);
  }

  private static Rig rig(Site site) {
    return new Rig(
        1, "invented", "Invented garden", site, ZoneId.of("Europe/Vienna"), null, Instant.EPOCH);
  }
}
