package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** Readings entered beside the tripod: on a phone, by touch, with and without a network. */
@BrowserIT
class LogBrowserIT {

  private static final DateTimeFormatter FIELD =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss");
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
  private static final Pattern COMPUTED =
      Pattern.compile("altitude ([\u2212\\d.]+)\u00b0, azimuth ([\\d.]+)\u00b0");

  @Autowired private RestTestClient http;

  @Test
  void entersThreeFramesByTouch(Visitor visitor) {
    RigClient rig = calibrated("log-touch");
    Page page = open(visitor, rig);
    frames(page, "1640,5", "1641.9", "1641.1");
    assertThat(computed(page)).containsText("residual");
    enter(page);
    assertThat(entries(page)).hasCount(1);
    assertThat(entries(page)).containsText("is in the ledger");
    JsonNode reading = readings(rig).get(0);
    assertThat(reading.path("diameterPx").asDouble()).isCloseTo(1641.17, within(0.01));
    assertThat(reading.path("framesPx").size()).isEqualTo(3);
    assertThat(Instant.parse(reading.path("takenAt").asString()))
        .isCloseTo(Instant.now(), within(2, ChronoUnit.MINUTES));
  }

  @Test
  void opensTheKeyboardOfNumbersForNumbers(Visitor visitor) {
    Page page = open(visitor, calibrated("log-keyboard"));
    for (String id : List.of("frame-1", "uncertainty", "altitude", "azimuth", "fNumber")) {
      assertThat(page.locator("#" + id)).hasAttribute("inputmode", "decimal");
      assertThat(page.locator("#" + id).boundingBox().height).isGreaterThanOrEqualTo(44);
    }
    assertThat(page.locator("#iso")).hasAttribute("inputmode", "numeric");
  }

  @Test
  void computesAltitudeAndAzimuthAsTheServiceDoes(Visitor visitor) {
    RigClient rig = calibrated("log-computed");
    Page page = open(visitor, rig);
    Instant now = Instant.now().truncatedTo(ChronoUnit.SECONDS);
    int above = 0;
    for (int hours = 1; hours <= 28; hours += 3) {
      Instant at = now.minus(Duration.ofMinutes(60L * hours + 7));
      taken(page, at);
      JsonNode sky = rig.getAt("/api/sky?rig=" + rig.slug() + "&at=" + at).body();
      double apparentDeg = sky.path("apparentAltitudeDeg").asDouble();
      if (apparentDeg > 3) {
        above++;
        Matcher matcher = settled(page, at);
        assertThat(Double.parseDouble(matcher.group(1))).isCloseTo(apparentDeg, within(0.011));
        assertThat(Double.parseDouble(matcher.group(2)))
            .isCloseTo(sky.path("azimuthDeg").asDouble(), within(0.011));
      }
    }
    assertThat(above).isPositive();
  }

  @Test
  void tellsSightedFromComputedInArcminutesAndTakesAProtractor(Visitor visitor) {
    RigClient rig = calibrated("log-protractor");
    Page page = open(visitor, rig);
    Instant at = culmination(rig);
    taken(page, at);
    frames(page, "1640", "1642", "1641");
    page.getByText("as the plumb line shows it").tap();
    page.locator("#altitude").fill("35,5");
    page.locator("#azimuth").fill("181.5");
    assertThat(computed(page)).containsText("Sighted altitude 54.5\u00b0:");
    assertThat(computed(page)).containsText(Pattern.compile("\\d+\u2032 (higher|lower)"));
    assertThat(computed(page)).containsText("further right");
    page.locator("#exposure").fill("60");
    page.locator("#sky").fill("thin cloud");
    enter(page);
    assertThat(entries(page)).containsText("is in the ledger");
    JsonNode reading = readings(rig).get(0);
    assertThat(reading.path("altitudeDeg").asDouble()).isEqualTo(54.5);
    assertThat(reading.path("azimuthDeg").asDouble()).isEqualTo(181.5);
    assertThat(reading.path("exposureS").asDouble()).isCloseTo(1 / 60.0, within(1e-9));
    assertThat(reading.path("sky").asString()).isEqualTo("thin cloud");
  }

  @Test
  void saysWhatOfTheMoonTheRigsOwnHorizonHides(Visitor visitor) {
    RigClient rig = calibrated("log-behind");
    Instant at = culmination(rig);
    Page page = open(visitor, rig);
    taken(page, at);
    settled(page, at);
    assertThat(computed(page)).not().containsText("own horizon");
    double middleDeg =
        rig.getAt("/api/sky?rig=log-behind&at=" + at).body().path("apparentAltitudeDeg").asDouble();
    levelLine(rig, middleDeg);
    assertThat(told(visitor, rig, at))
        .contains("own horizon stands %.1f\u00b0 high there".formatted(middleDeg))
        .contains("the Moon is partly behind it then.");
    levelLine(rig, 89);
    assertThat(told(visitor, rig, at))
        .contains("own horizon stands 89.0\u00b0 high there: the Moon is behind it then.");
    levelLine(rig, 0);
    assertThat(told(visitor, rig, at)).doesNotContain("own horizon");
  }

  private static void levelLine(RigClient rig, double altitudeDeg) {
    String line =
        """
        [{"azimuthDeg": 0, "altitudeDeg": %1$s}, {"azimuthDeg": 180, "altitudeDeg": %1$s}]"""
            .formatted(altitudeDeg);
    assertThat(rig.putJson("/horizon", line).status()).isLessThan(300);
  }

  /** In a browser of its own, so that nothing kept stands in the way. */
  private static String told(Visitor visitor, RigClient rig, Instant at) {
    Page page = open(visitor, rig);
    taken(page, at);
    settled(page, at);
    return computed(page).textContent();
  }

  @Test
  void turnsInchesOnAScreenIntoMillimetres(Visitor visitor) {
    RigClient rig = RigClient.described(http, "log-inches");
    Page page = open(visitor, rig);
    page.getByText("inches on a screen").tap();
    frames(page, "7.10", "7.12", "7.11");
    assertThat(computed(page)).containsText("no calibration yet");
    enter(page);
    assertThat(entries(page)).containsText("is in the ledger");
    assertThat(readings(rig).get(0).path("framesMm").get(0).asDouble()).isEqualTo(180.34);
  }

  @Test
  void seesANightPairBeforeItIsSent(Visitor visitor) {
    RigClient rig = calibrated("log-pair");
    Page page = open(visitor, rig);
    Instant high = culmination(rig);
    taken(page, high.minus(Duration.ofHours(3)));
    frames(page, "1640", "1642", "1641");
    assertThat(computed(page)).containsText("The first reading of this pass");
    enter(page);
    assertThat(entries(page)).containsText("is in the ledger");
    taken(page, high);
    frames(page, "1650", "1652", "1651");
    assertThat(computed(page)).containsText("Makes a night pair");
    assertThat(computed(page))
        .containsText(Pattern.compile("Observed 1\\.00\\d+ \u00b1 0\\.000\\d+"));
  }

  @Test
  void worksWithoutANetworkAndSendsEachEntryOnce(Visitor visitor) {
    RigClient rig = calibrated("log-offline");
    Page page = open(visitor, rig);
    assertThat(page.locator("[data-network]")).containsText("works without a network");
    page.context().setOffline(true);
    page.reload();
    ready(page);
    assertThat(page.locator("[data-network]")).containsText("No network");
    assertThat(page.evaluate("fetch(location.pathname + '?new').then(() => true, () => false)"))
        .as("whether a page that is not kept can be had")
        .isEqualTo(false);
    Instant at = Instant.now().truncatedTo(ChronoUnit.SECONDS).minus(Duration.ofHours(3));
    for (int i = 0; i < 2; i++) {
      taken(page, at.plus(Duration.ofMinutes(20L * i)));
      frames(page, "1640", "1642", "164" + i);
      assertThat(computed(page)).containsText("Computed: altitude");
      enter(page);
    }
    assertThat(entries(page)).hasCount(2);
    assertThat(entries(page).first()).containsText("waits for the network");
    page.reload();
    ready(page);
    assertThat(entries(page)).hasCount(2);
    assertThat(readings(rig)).isEmpty();
    page.context().setOffline(false);
    assertThat(page.locator("[data-state=held]")).hasCount(2);
    page.reload();
    ready(page);
    assertThat(page.locator("[data-state=held]")).hasCount(2);
    assertThat(readings(rig)).hasSize(2);
  }

  @Test
  void keepsTheDarkLightThatIsChosenWithoutANetwork(Visitor visitor) {
    Page page = open(visitor, calibrated("log-light"));
    assertThat(page.locator("[data-network]")).containsText("works without a network");
    page.context().setOffline(true);
    page.locator("button[name=light][value=night]").tap();
    page.reload();
    ready(page);
    assertThat(page.locator("html")).hasAttribute("data-light", "night");
    assertThat(page.locator("button[name=light][value=night]"))
        .hasAttribute("aria-pressed", "true");
  }

  @Test
  void bringsBackWhatWasTypedWhenThePageWasDropped(Visitor visitor) {
    Page page = open(visitor, calibrated("log-draft"));
    Instant at = Instant.now().truncatedTo(ChronoUnit.SECONDS).minus(Duration.ofHours(2));
    taken(page, at);
    frames(page, "1640", "1642", "");
    page.getByText("upright").tap();
    page.reload();
    ready(page);
    assertThat(page.locator("#frame-2")).hasValue("1642");
    assertThat(page.locator("#taken")).hasValue(FIELD.format(at.atZone(VIENNA)));
    assertThat(page.locator("input[value=vertical]")).isChecked();
    page.locator("#frame-3").fill("1641");
    enter(page);
    assertThat(entries(page)).containsText("vertical");
    page.reload();
    ready(page);
    assertThat(page.locator("#frame-1")).hasValue("");
  }

  @Test
  void takesARepeatForTheEntryItIs(Visitor visitor) {
    RigClient rig = calibrated("log-repeat");
    Page page = open(visitor, rig);
    Instant at = Instant.now().truncatedTo(ChronoUnit.SECONDS).minus(Duration.ofHours(1));
    for (int i = 0; i < 2; i++) {
      taken(page, at);
      frames(page, "1640", "1642", "1641");
      enter(page);
      assertThat(page.locator("[data-state=held]")).hasCount(i + 1);
    }
    assertThat(entries(page).first()).containsText("was in the ledger already");
    assertThat(readings(rig)).hasSize(1);
  }

  @Test
  void bringsBackWhatWasRefusedToBeMended(Visitor visitor) {
    RigClient rig = calibrated("log-refused");
    Page page = open(visitor, rig);
    Instant at = Instant.now().truncatedTo(ChronoUnit.SECONDS).minus(Duration.ofHours(1));
    taken(page, at);
    frames(page, "1640", "1642", "1641");
    enter(page);
    assertThat(page.locator("[data-state=held]")).hasCount(1);
    taken(page, at);
    frames(page, "1700", "1702", "1701");
    enter(page);
    Locator refused = page.locator("[data-state=refused]");
    assertThat(refused).containsText("expected");
    refused.getByText("Mend it in the form").tap();
    assertThat(page.locator("#frame-1")).hasValue("1700");
    taken(page, at.plusSeconds(300));
    enter(page);
    assertThat(page.locator("[data-state=held]")).hasCount(2);
    assertThat(refused).hasCount(0);
    assertThat(readings(rig)).hasSize(2);
  }

  @Test
  void saysBesideTheFieldWhatIsMissing(Visitor visitor) {
    Page page = open(visitor, calibrated("log-complaint"));
    page.locator("#frame-1").fill("1640");
    page.locator("#azimuth").fill("400");
    enter(page);
    assertThat(page.locator("#frames-complaint")).containsText("three frames");
    assertThat(page.locator("#azimuth-complaint")).containsText("from 0 to 360");
    assertThat(page.locator("#frame-1")).isFocused();
    assertThat(entries(page)).hasCount(0);
  }

  private RigClient calibrated(String slug) {
    RigClient rig = RigClient.described(http, slug);
    rig.postJson(
        "/calibrations",
        """
        {"takenAt": "2026-01-01T12:00:00Z", "method": "target", "targetLengthMm": 297,
         "targetLengthUncertaintyMm": 0.2, "targetDistanceM": 50, "targetDistanceUncertaintyM": 0.02,
         "measuredPx": 1080, "measuredUncertaintyPx": 0.8}""");
    return rig;
  }

  private static Page open(Visitor visitor, RigClient rig) {
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/" + rig.slug() + "/log");
    ready(page);
    return page;
  }

  private static void ready(Page page) {
    page.waitForSelector("html[data-log-ready=yes]");
  }

  private static void frames(Page page, String first, String second, String third) {
    page.locator("#frame-1").fill(first);
    page.locator("#frame-2").fill(second);
    page.locator("#frame-3").fill(third);
  }

  /** A browser leaves seconds of nought out of the field. */
  private static void taken(Page page, Instant at) {
    String text = FIELD.format(at.atZone(VIENNA));
    page.locator("#taken").fill(text.endsWith(":00") ? text.substring(0, 16) : text);
  }

  private static void enter(Page page) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Enter the reading")).tap();
  }

  private static Locator computed(Page page) {
    return page.locator("[data-computed]");
  }

  private static Locator entries(Page page) {
    return page.locator("[data-entries] > li");
  }

  /** What is computed once the words belong to that time. */
  private static Matcher settled(Page page, Instant at) {
    String utc = FIELD.format(at.atZone(ZoneId.of("UTC"))).substring(11, 16);
    assertThat(page.locator("[data-utc]")).containsText(utc + " UTC");
    page.waitForTimeout(400);
    Matcher matcher = COMPUTED.matcher(computed(page).textContent());
    assertThat(matcher.find()).as("computed at " + at).isTrue();
    return matcher;
  }

  /** The last culmination that is over. */
  private static Instant culmination(RigClient rig) {
    Instant now = Instant.now();
    JsonNode passes =
        rig.get("/passes?from=" + now.minus(Duration.ofHours(34)) + "&to=" + now).body();
    Instant found = Instant.EPOCH;
    for (JsonNode pass : passes) {
      Instant at = Instant.parse(pass.path("culminationAt").asString());
      found = at.isBefore(now.minus(Duration.ofMinutes(5))) ? at : found;
    }
    return found.truncatedTo(ChronoUnit.SECONDS);
  }

  private static JsonNode readings(RigClient rig) {
    return rig.get("/readings").body().path("readings");
  }
}
