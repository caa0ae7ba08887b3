package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.JSHandle;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.ReadingLines;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

/** A CSV file given to the log page, with lines that have to be mended. */
@BrowserIT
class ReadingsFileBrowserIT {

  private static final String WITH_BAD_LINES =
      """
      taken_at,axis,diameter_arcmin,uncertainty_arcmin,note
      2024-03-01T01:10:00Z,horizontal,30.44,0.031,"first,
      of two lines"
      2024-03-02 01:10,horizontal,30.51,0.031,no offset

      2024-03-03T01:10:00Z,sideways,30.60,0.031,no such axis
      2024-03-04T01:10:00Z,horizontal,30.80,0.031,last
      """;

  @Autowired private RestTestClient http;

  @Test
  void storesTheGoodLinesAndMendsTheBadOnesInTheirPlace(Visitor visitor) {
    RigClient rig = RigClient.described(http, "file-mended");
    Page page = open(visitor, rig);
    drop(page, WITH_BAD_LINES);
    assertThat(status(page)).hasText("2 readings stored. 2 lines to mend below.");
    Locator lines = page.locator("[data-lines] > li");
    assertThat(lines).hasCount(2);
    assertThat(lines.nth(0)).containsText("Line 4");
    assertThat(lines.nth(0)).containsText("taken_at 2024-03-02 01:10: expected");
    assertThat(lines.nth(1)).containsText("Line 6");
    assertThat(lines.nth(1)).containsText("axis sideways: expected");
    assertThat(lines.nth(1).locator(".beside").last()).containsText("7  2024-03-04T01:10:00Z");
    page.getByLabel("Line 4").fill("2024-03-02T01:10:00Z,horizontal,30.51,0.031,mended");
    send(page);
    assertThat(status(page)).hasText("3 readings stored. 1 line to mend below.");
    page.getByLabel("Line 6").fill("2024-03-03T01:10:00Z,horizontal,30.60,0.031,mended too");
    send(page);
    assertThat(status(page)).hasText("4 readings stored. No line is left over.");
    assertThat(lines).hasCount(0);
    assertThat(rig.get("/readings").body().path("readings")).hasSize(4);
  }

  @Test
  void countsSetupsFromOne(Visitor visitor) {
    RigClient rig = RigClient.described(http, "file-unit");
    rig.postCsv(
        "/readings",
        "taken_at,axis,diameter_px,uncertainty_px\n2024-03-01T01:10:00Z,horizontal,1700,1\n");
    Page page = open(visitor, rig);
    choose(
        page,
        "taken_at,axis,diameter_mm,uncertainty_mm\n2024-03-02T01:10:00Z,horizontal,117,0.4\n");
    assertThat(page.locator("[data-lines] > li"))
        .containsText("expected a length in px, the unit of setup 1.");
  }

  @Test
  void takesALongFileInPartsAndTwiceForOnce(Visitor visitor) {
    RigClient rig = RigClient.described(http, "file-long");
    Page page = open(visitor, rig);
    for (String told :
        new String[] {
          "1200 readings stored. No line is left over.",
          "0 readings stored. 1200 lines the ledger had already. No line is left over."
        }) {
      choose(page, ReadingLines.csv(0, 1200));
      assertThat(status(page)).hasText(told);
    }
  }

  @Test
  void storesEachLineOnceWhenTheNetworkIsLostOnTheWay(Visitor visitor) {
    RigClient rig = RigClient.described(http, "file-lost");
    Page page = open(visitor, rig);
    AtomicInteger parts = new AtomicInteger();
    page.route(
        "**/readings?keepGood=true",
        part -> {
          if (parts.incrementAndGet() == 2) {
            part.abort();
          } else {
            part.resume();
          }
        });
    choose(page, ReadingLines.csv(0, 1200));
    assertThat(status(page)).containsText("500 readings stored. The network was lost on the way.");
    choose(page, ReadingLines.csv(0, 1200));
    assertThat(status(page))
        .hasText("700 readings stored. 500 lines the ledger had already. No line is left over.");
  }

  @Test
  void refusesAFileWithoutTheColumnsInWords(Visitor visitor) {
    Page page = open(visitor, RigClient.described(http, "file-columns"));
    choose(page, "when,what\n2024-03-01T01:10:00Z,30\n");
    assertThat(status(page)).containsText("expected");
    assertThat(status(page)).containsText("0 readings stored.");
  }

  private static Page open(Visitor visitor, RigClient rig) {
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/" + rig.slug() + "/log");
    page.waitForSelector("html[data-log-ready=yes]");
    return page;
  }

  private static void drop(Page page, String csv) {
    JSHandle carried =
        page.evaluateHandle(
            """
            csv => {
              const carried = new DataTransfer();
              carried.items.add(new File([csv], "readings.csv", { type: "text/csv" }));
              return carried;
            }""",
            csv);
    page.locator("[data-drop]").dispatchEvent("drop", Map.of("dataTransfer", carried));
  }

  private static void choose(Page page, String csv) {
    page.locator("#csv")
        .setInputFiles(
            new FilePayload("readings.csv", "text/csv", csv.getBytes(StandardCharsets.UTF_8)));
  }

  private static void send(Page page) {
    page.getByText("Send the mended lines").click();
  }

  private static Locator status(Page page) {
    return page.locator("[data-file-status]");
  }
}
