package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Media;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.limbspan.demo.Demo;
import org.limbspan.testing.Judged;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

/** What a person does on the pages of one rig. */
@BrowserIT
class ChapterBrowserIT {

  private static final String DRAWN =
      "() => [...document.querySelectorAll('figure[data-figure], figure[data-drawing]')]"
          + ".every((figure) => figure.querySelector('canvas'))";

  private static final String NEWS =
      "() => document.dispatchEvent(new CustomEvent('limbspan:news'))";

  private static final String LATER =
      """
      {"takenAt": "2025-06-10T20:00:00Z", "axis": "horizontal", "diameterArcmin": 29.6,
       "uncertaintyArcmin": 0.03}""";

  @Autowired private RestTestClient http;
  @Autowired private Demo demo;

  @BeforeAll
  static void waitAsLongAsABusyMachineNeeds() {
    PlaywrightAssertions.setDefaultAssertionTimeout(20_000);
  }

  @Test
  void showsOnTheCyclePageTheReadingThatWasJustSent(Visitor visitor) {
    ReferenceFolder folder = new ReferenceFolder("clean-pairs");
    RigClient rig = folder.describe(http, "chapter-live");
    rig.postCsv("/readings", folder.readings());
    int before = Judged.get(rig, "/cycle").path("readingCount").asInt();
    Page page = open(visitor, Screen.LAPTOP, "/rigs/chapter-live/cycle");
    page.evaluate("() => { globalThis.stillTheSamePage = true; }");
    Locator table = openTable(page);
    assertThat(table.locator("tbody tr")).hasCount(before);

    assertThat(rig.postJson("/readings", LATER).status()).isEqualTo(200);

    assertThat(page.locator("[data-news]")).containsText(Pattern.compile("\\d\\d:\\d\\d: "));
    assertThat(table.locator("tbody tr")).hasCount(before + 1);
    assertThat(table.locator("tbody tr").last()).containsText("29.600\u2032");
    assertThat(page.evaluate("globalThis.stillTheSamePage")).isEqualTo(true);
  }

  /** Sixteen months after the others, while only the table is in sight; told once. */
  @Test
  void putsIntoAnOpenTableAReadingFarBehindTheOthers(Visitor visitor) {
    ReferenceFolder folder = new ReferenceFolder("clean-pairs");
    RigClient rig = folder.describe(http, "chapter-far");
    rig.postCsv("/readings", folder.readings());
    int before = Judged.get(rig, "/cycle").path("readingCount").asInt();
    Page page = visitor.page(Screen.PHONE);
    page.route(url -> url.endsWith("/live"), Route::abort);
    page.navigate("/rigs/chapter-far/cycle");
    page.waitForFunction(DRAWN);
    Locator table = openTable(page);
    assertThat(table.locator("tbody tr")).hasCount(before);
    table.locator("tbody tr").last().scrollIntoViewIfNeeded();
    assertThat(page.locator("figure[data-figure] canvas"))
        .not()
        .isInViewport(new LocatorAssertions.IsInViewportOptions().setRatio(0.001));

    rig.postJson("/readings", LATER);
    Judged.get(rig, "/cycle");
    page.evaluate(NEWS);

    assertThat(table.locator("tbody tr")).hasCount(before + 1);
  }

  @Test
  void showsAllNightsAgainAfterNewsCameToANarrowWindow(Visitor visitor) {
    Page page = open(visitor, Screen.LAPTOP, "/rigs/" + demo.enter().slug() + "/nights");
    Locator table = openTable(page);
    Locator rows = table.locator("tbody tr");
    assertThat(rows).not().hasCount(0);
    int all = rows.count();
    for (int i = 0; i < 4; i++) {
      page.locator("[data-turn=closer]").first().click();
    }
    page.waitForResponse(
        response -> response.url().contains("nights.json"), () -> page.evaluate(NEWS));
    page.waitForCondition(() -> rows.count() < all / 2);

    page.locator("[data-turn=whole]").first().click();

    assertThat(rows).hasCount(all);
  }

  /** The clock of the Chatham Islands parts from others by three quarters of an hour. */
  @Test
  void tellsNewsByTheClockOfTheRig(Visitor visitor) {
    RigClient rig = new RigClient(http, "chapter-clock");
    rig.describe(
        """
        {"slug": "chapter-clock", "name": "Invented shore", "latitudeDeg": -43.95,
         "longitudeDeg": -176.55, "elevationM": 10, "timeZone": "Pacific/Chatham"}""");
    Page page = visitor.page(Screen.LAPTOP);
    page.waitForResponse("**/live", () -> page.navigate("/rigs/chapter-clock/cycle"));
    ZonedDateTime before = ZonedDateTime.now(ZoneId.of("Pacific/Chatham"));
    rig.postJson(
        "/readings",
        """
        {"takenAt": "2025-06-10T09:00:00Z", "axis": "horizontal", "diameterArcmin": 29.6,
         "uncertaintyArcmin": 0.03}""");
    String minutes =
        IntStream.rangeClosed(0, 2)
            .mapToObj(i -> before.plusMinutes(i).format(DateTimeFormatter.ofPattern("HH:mm")))
            .collect(Collectors.joining("|"));
    assertThat(page.locator("[data-news]")).containsText(Pattern.compile("(" + minutes + "): "));
  }

  @Test
  void keepsTheNewestAnswerWhenAnOlderOneComesLate(Visitor visitor) {
    Page page = open(visitor, Screen.LAPTOP, "/rigs/" + demo.enter().slug() + "/cycle");
    Locator table = openTable(page);
    Locator rows = table.locator("tbody tr");
    assertThat(rows).not().hasCount(0);
    int before = rows.count();
    List<Route> held = new ArrayList<>();
    page.route(
        url -> url.contains("cycle.json"),
        route -> {
          if (held.isEmpty()) {
            held.add(route);
          } else {
            route.resume();
          }
        });
    page.evaluate(NEWS);
    page.waitForCondition(() -> !held.isEmpty());
    page.waitForResponse(
        response -> response.url().contains("cycle.json"), () -> page.evaluate(NEWS));

    held.get(0)
        .fulfill(
            new Route.FulfillOptions()
                .setContentType("application/json")
                .setBody("{\"timeZone\": \"UTC\", \"layers\": []}"));
    page.evaluate("() => new Promise((later) => setTimeout(later, 500))");

    assertThat(rows).hasCount(before);
    assertThat(page.locator("figure[data-figure] .readout")).not().containsText("could not be");
  }

  @Test
  void drawsTheReadingsOwnCurveWhenAsked(Visitor visitor) {
    Page page = open(visitor, Screen.LAPTOP, "/rigs/" + demo.enter().slug() + "/cycle");
    Locator own = button(page, "Draw the readings\u2019 own curve");
    page.waitForResponse(
        response -> response.url().contains("cycle.json") && response.text().contains("\"own\":{"),
        own::click);
    assertThat(own).hasAttribute("aria-pressed", "true");
  }

  @Test
  void answersARemarkByTheKeyboardAndSeesWhatFollowed(Visitor visitor) {
    ReferenceFolder folder = new ReferenceFolder("vertical-as-horizontal");
    RigClient rig = folder.describe(http, "chapter-answer");
    rig.postCsv("/readings", folder.readings());
    Judged.get(rig, "/alerts");
    Page page = open(visitor, Screen.LAPTOP, "/rigs/chapter-answer/alerts");

    page.getByLabel("Readings were entered wrongly").press(" ");
    page.getByLabel("When it changed, if you know").fill("2023-09-23 03:00");
    page.getByLabel("They were measured across the horizon").press(" ");
    page.getByLabel("In your own words").fill("the new desk stands crosswise");
    button(page, "Enter the answer").press("Enter");

    assertThat(page).hasURL(Pattern.compile("/alerts\\?answered="));
    assertThat(page.getByText("readings were entered again as vertical")).isVisible();
    assertThat(page.getByText("\u201cthe new desk stands crosswise\u201d")).isVisible();
    Judged.get(rig, "/alerts");
    assertThat(page.locator(".margin").getByText("settled")).isVisible();
    assertThat(button(page, "Enter the answer")).hasCount(0);
  }

  @Test
  void withdrawsTheReadingsThatARemarkConcerns(Visitor visitor) {
    ReferenceFolder folder = new ReferenceFolder("step-minus-1");
    RigClient rig = folder.describe(http, "chapter-withdraw");
    rig.postCsv("/readings", folder.readings());
    int before = Judged.get(rig, "/cycle").path("readingCount").asInt();
    Page page = open(visitor, Screen.PHONE, "/rigs/chapter-withdraw/alerts");

    page.getByLabel("Readings were entered wrongly").tap();
    page.getByLabel("Withdraw them").tap();
    button(page, "Enter the answer").tap();

    assertThat(page.getByText("readings were withdrawn.")).isVisible();
    assertThat(Judged.get(rig, "/cycle").path("readingCount").asInt()).isLessThan(before);
  }

  @Test
  void entersACalibrationInInchesAndYards(Visitor visitor) {
    RigClient rig = RigClient.described(http, "chapter-yards");
    Page page = open(visitor, Screen.PHONE, "/rigs/chapter-yards/rig");
    page.getByLabel("When it was photographed").fill("2024-02-28 12:00");
    fill(page, "Length of the sheet", "11", "0.01", "in");
    fill(page, "Distance from the lens to the sheet", "50", "1/36", "yd");
    fill(page, "Length of the sheet in the image", "1100", "1", "px");
    button(page, "Enter the calibration").tap();

    // An 11 in sheet at 50 yd spans 0.3501 degrees (common practice, no source): 1.1459"/px.
    assertThat(page.locator(".confirmation")).containsText("gives 1.1459 \u00b1 0.0016");
    var held = rig.get("/calibrations").body().toString();
    assertThat(held).contains("279.4", "45.72");
  }

  @Test
  void saysWhatIsWrongWithACalibrationAndKeepsWhatWasWritten(Visitor visitor) {
    RigClient.described(http, "chapter-slip");
    Page page = open(visitor, Screen.LAPTOP, "/rigs/chapter-slip/rig");
    page.getByLabel("When it was photographed").fill("yesterday");
    fill(page, "Distance from the lens to the sheet", "fifty", "", "yd");
    button(page, "Enter the calibration").click();
    assertThat(page.getByRole(AriaRole.ALERT)).containsText("Nothing is entered yet");
    Locator distance = page.locator("#distance");
    assertThat(distance).hasValue("fifty");
    assertThat(distance).hasAttribute("aria-invalid", "true");
    assertThat(page.getByLabel("Distance from the lens to the sheet, unit")).hasValue("yd");
  }

  @Test
  void opensASetupAndTakesACalibrationBack(Visitor visitor) {
    ReferenceFolder folder = new ReferenceFolder("clean-pairs");
    RigClient rig = folder.describe(http, "chapter-setup");
    Page page = open(visitor, Screen.LAPTOP, "/rigs/chapter-setup/rig");
    page.getByText("Open a new setup").click();
    page.getByLabel("Since when").fill("2024-05-01");
    page.getByLabel("What was changed").fill("another lens");
    button(page, "Open the setup").click();
    assertThat(page.locator("[data-live=setups]")).containsText("another lens");

    int held = rig.get("/calibrations").body().path("calibrations").size();
    Locator rows = page.locator("[data-live=calibrations] tbody tr");
    int shown = rows.count();
    assertThat(shown).isPositive();
    rows.first().getByRole(AriaRole.BUTTON).click();
    assertThat(rows).hasCount(shown - 1);
    assertThat(rig.get("/calibrations").body().path("calibrations").size())
        .isLessThanOrEqualTo(held);
  }

  @Test
  void printsFiguresAndTablesWithoutWhatIsOnlyForTheScreen(Visitor visitor) {
    String slug = demo.enter().slug();
    Judged.get(new RigClient(http, slug), "/nights");
    Page page = open(visitor, Screen.LAPTOP, "/rigs/" + slug + "/nights");
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
    assertThat(page.locator("nav.chapters")).isHidden();
    assertThat(button(page, "Draw the near Moon as well")).isHidden();
    assertThat(page.locator("canvas")).isVisible();
    assertThat(page.locator("#table-3")).isVisible();
    assertThat(page.evaluate("getComputedStyle(document.documentElement).backgroundColor"))
        .isEqualTo("rgb(255, 255, 255)");
    assertThat(page.pdf()).hasSizeGreaterThan(20_000);
  }

  private static Page open(Visitor visitor, Screen screen, String path) {
    Page page = visitor.page(screen, "day");
    page.navigate(path);
    page.waitForFunction(DRAWN);
    return page;
  }

  /** The opened table of the page's only figure that turns with the window. */
  private static Locator openTable(Page page) {
    Locator table = page.locator("figure[data-figure] details.table");
    table.locator("summary").click();
    return table;
  }

  private static void fill(Page page, String name, String value, String uncertainty, String unit) {
    page.getByLabel(name, exactly()).fill(value);
    page.getByLabel(name + ", standard uncertainty", exactly()).fill(uncertainty);
    page.getByLabel(name + ", unit", exactly()).selectOption(unit);
  }

  private static Page.GetByLabelOptions exactly() {
    return new Page.GetByLabelOptions().setExact(true);
  }

  private static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }
}
