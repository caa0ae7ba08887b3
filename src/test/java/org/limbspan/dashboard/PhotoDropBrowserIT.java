package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.JSHandle;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.limbspan.limb.render.MoonScene;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.testing.Answer;
import org.limbspan.testing.Judged;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

/** The morning after: the camera's files, chosen on the rig's page. */
@BrowserIT
class PhotoDropBrowserIT {

  private static final String[] VISITS = {"21:10", "22:30", "23:50"};
  private static final double MEASURING_MS = 120_000;

  @Autowired private RestTestClient http;

  @Test
  void makesThreeReadingsOfANightOfNineFiles(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-night");
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/" + rig.slug());
    page.locator("input#photo").setInputFiles(night());
    measure(page);
    assertThat(page.locator("[data-status]"))
        .containsText(
            "9 photographs: 9 measured, none refused. They belong to 3 readings", patiently());
    Locator made = page.locator("[data-readings] li");
    assertThat(made).hasCount(3);
    assertThat(made.first()).containsText("3 frames");
    made.first().getByRole(AriaRole.LINK).click();
    assertThat(page).hasURL(Pattern.compile("/rigs/drop-night/readings/\\d+$"));
    assertThat(page.getByText("From 3 photographs: IMG_0101.JPG, IMG_0102.JPG, IMG_0103.JPG."))
        .isVisible();
    assertThat(page.locator("figure img, figure svg, figure object").first()).isVisible();
  }

  @Test
  void saysThatNothingWasAddedByFilesThatAreHeld(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-again");
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/" + rig.slug());
    send(page, photograph("21:10"));
    assertThat(page.locator("[data-status]"))
        .containsText("1 measured, none refused. They belong to one reading:", patiently());
    assertThat(page.locator("[data-after]")).isVisible();
    Judged.get(rig, "/cycle");
    page.navigate("/rigs/" + rig.slug());
    send(page, photograph("21:10"));
    assertThat(page.locator("[data-status]"))
        .containsText("1 held already, none refused. Nothing was added.", patiently());
    assertThat(page.locator("[data-after]")).isHidden();
    assertThat(page.locator("[data-live=log] tbody tr")).hasCount(1);
  }

  /** Figures and log follow by themselves; a figure that was not there cannot. */
  @Test
  void saysWhenThePageHasMoreToShow(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-more");
    Answer typed =
        rig.postJson(
            "/readings",
            """
            [{"takenAt": "2026-05-29T21:10:00+02:00", "axis": "horizontal",
              "framesPx": [417.1, 417.6, 417.4]}]""");
    assertThat(typed.status()).as(typed.toString()).isEqualTo(200);
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/" + rig.slug());
    assertThat(page.locator("[data-live=log] tbody tr")).hasCount(1);
    assertThat(page.locator("[data-figure=nights]")).hasCount(0);
    send(page, photograph("23:50"));
    assertThat(page.locator("[data-live=log] tbody tr")).hasCount(2, countPatiently());
    page.locator("[data-after] a").click();
    assertThat(page.locator("[data-figure=nights]")).hasCount(1);
  }

  /** Where it said that nothing was entered, that is over; what became of the files stays told. */
  @Test
  void bringsThePageUpToDateBelowWhatItTells(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-remarks");
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/" + rig.slug());
    Locator remarks = page.locator("section[aria-labelledby=remarks]");
    assertThat(remarks).containsText("None yet.");
    assertThat(page.locator("#begin")).isVisible();
    send(page, photograph("21:10"));
    assertThat(page.locator("[data-readings] li")).hasCount(1, countPatiently());
    assertThat(remarks).containsText("Nothing to remark: every reading so far");
    assertThat(remarks).not().containsText("None yet.");
    assertThat(page.locator("#begin")).hasCount(0);
    assertThat(page.locator("[data-live=standing]")).containsText("1 reading on 29 May 2026");
    assertThat(page.locator("[data-live=span]")).containsText("begun 29 May 2026");
    assertThat(page.locator("[data-status]")).containsText("1 measured, none refused.");
    assertThat(page.locator("[data-readings] a")).containsText("Reading of 29 May 2026, 21:10");
    assertThat(page.locator("[data-files] li")).containsText("IMG_0100.JPG");
    assertThat(page.locator("[data-after]")).isVisible();
  }

  @Test
  void followsItsOwnDropWhereNoNewsCome(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-alone");
    Page page = visitor.page(Screen.LAPTOP);
    page.route("**/rigs/drop-alone/live", Route::abort);
    page.navigate("/rigs/" + rig.slug());
    assertThat(page.locator("[data-live=standing]")).containsText("No reading yet");
    send(page, photograph("21:10"));
    assertThat(page.locator("[data-live=standing]"))
        .containsText("1 reading on 29 May 2026", patiently());
    assertThat(page.locator("[data-files] li")).containsText("IMG_0100.JPG");
  }

  /** A phone pushes the table sideways; the remarks need not be as narrow as on a sheet. */
  @Test
  void keepsTheRowOfABracketLowOnAPhone(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-row");
    rig.postJson(
        "/readings",
        """
        [{"takenAt": "2026-05-29T21:10:00+02:00", "axis": "horizontal",
          "framesPx": [417.1, 417.6, 417.4],
          "note": "From 3 photographs: IMG_0101.JPG, IMG_0102.JPG, IMG_0103.JPG."}]""");
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/" + rig.slug());
    Locator row = page.locator("[data-live=log] tbody tr");
    assertThat(row).containsText("IMG_0103.JPG");
    double lines =
        ((Number)
                row.evaluate(
                    "row => row.offsetHeight / parseFloat(getComputedStyle(row).lineHeight)"))
            .doubleValue();
    assertThat(lines).isBetween(1.0, 3.5);
    double wide = row.locator(".note").boundingBox().width;
    assertThat(wide).isLessThan(page.locator("[data-live=log]").boundingBox().width);
  }

  @Test
  void bringsWhatBecomesOfDroppedFilesIntoSight(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-sight");
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/" + rig.slug());
    JSHandle dropped =
        page.evaluateHandle(
            """
            () => {
              const dropped = new DataTransfer();
              dropped.items.add(new File(["no picture"], "list.txt", { type: "text/plain" }));
              return dropped;
            }""");
    page.dispatchEvent("h1", "drop", Map.of("dataTransfer", dropped));
    assertThat(page.locator("[data-status]")).containsText("1 refused", patiently());
    assertThat(page.locator("[data-status]")).isInViewport();
    assertThat(page.locator("[data-files] li")).isInViewport();
  }

  @Test
  void keepsTheFocusOnTheButtonThatWasPressed(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-focus");
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/" + rig.slug());
    page.locator("input#photo").setInputFiles(photograph("21:10"));
    button(page).focus();
    page.keyboard().press("Enter");
    assertThat(page.locator("[data-status]")).containsText("1 measured", patiently());
    assertThat(button(page)).isFocused();
  }

  @Test
  void saysWhyAPhotographIsRefused(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-refused");
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/" + rig.slug());
    page.locator("input#photo")
        .setInputFiles(
            new FilePayload[] {
              new FilePayload(
                  "list.txt", "text/plain", "no picture".getBytes(StandardCharsets.UTF_8)),
              new FilePayload(
                  "timeless.jpg", "image/jpeg", RenderedMoon.plainJpeg(RenderedMoon.scene(420, 5)))
            });
    measure(page);
    assertThat(page.locator("[data-status]")).containsText("2 refused", patiently());
    assertThat(page.locator("[data-files] li").first()).containsText("list.txt");
    assertThat(page.locator("[data-files] li").last())
        .containsText(Pattern.compile("time", Pattern.CASE_INSENSITIVE));
  }

  @Test
  void takesTheTimeOfAFileThatTellsNoneFromTheForm(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-timeless");
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/" + rig.slug());
    FilePayload timeless =
        new FilePayload(
            "timeless.jpg", "image/jpeg", RenderedMoon.plainJpeg(RenderedMoon.scene(420, 5)));
    send(page, timeless);
    Locator line = page.locator("[data-files] li");
    assertThat(page.locator("[data-status]")).containsText("1 refused.", patiently());
    assertThat(line).containsText("filled in on the page of the rig");
    Locator field = page.getByLabel("When they were taken, if the files do not say");
    field.fill("yesterday");
    send(page, timeless);
    Locator complaint = page.locator("#takenAt-complaint");
    assertThat(complaint).containsText("is not understood: expected 2", patiently());
    assertThat(field).isFocused();
    assertThat(field).hasAttribute("aria-invalid", "true");
    assertThat(field).hasValue("yesterday");
    assertThat(line).containsText("Not measured");
    assertThat(page.locator("[data-status]")).containsText("Nothing was entered");
    field.fill("2026-05-29 21:12");
    measure(page);
    assertThat(line).containsText("Taken 29 May 2026, 21:12, as typed", patiently());
    assertThat(complaint).isHidden();
    assertThat(field).hasValue("");
    assertThat(page.locator("[data-readings] li")).hasCount(1);
  }

  @Test
  void keepsWhatIsFilledInWhileFilesAreMeasured(Visitor visitor) {
    RigClient rig = RigClient.described(http, "drop-meanwhile");
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/" + rig.slug());
    List<Route> requests = new ArrayList<>();
    page.route("**/rigs/drop-meanwhile/photos", requests::add);
    send(page, photograph("21:10"));
    page.waitForCondition(() -> !requests.isEmpty());
    page.locator("#takenAt").fill("2026-05-29 21:40");
    requests.get(0).resume();
    assertThat(page.locator("[data-status]")).containsText("1 measured", patiently());
    assertThat(page.locator("#takenAt")).hasValue("2026-05-29 21:40");
    assertThat(page.locator("input#photo")).hasValue("");
  }

  private static void send(Page page, FilePayload... files) {
    page.locator("input#photo").setInputFiles(files);
    measure(page);
  }

  private static void measure(Page page) {
    button(page).click();
  }

  private static Locator button(Page page) {
    return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Measure them"));
  }

  private static LocatorAssertions.ContainsTextOptions patiently() {
    return new LocatorAssertions.ContainsTextOptions().setTimeout(MEASURING_MS);
  }

  private static LocatorAssertions.HasCountOptions countPatiently() {
    return new LocatorAssertions.HasCountOptions().setTimeout(MEASURING_MS);
  }

  private static FilePayload photograph(String clock) {
    ExifBlock exif = ExifBlock.usual("2026:05:29 %s:00".formatted(clock));
    return new FilePayload(
        "IMG_0100.JPG", "image/jpeg", RenderedMoon.jpeg(RenderedMoon.scene(420, 101), exif));
  }

  private static FilePayload[] night() {
    FilePayload[] files = new FilePayload[9];
    for (int i = 0; i < files.length; i++) {
      int visit = i / 3;
      MoonScene scene = RenderedMoon.scene(419.0 + visit, 101);
      scene.centreX += 0.37 * i;
      ExifBlock exif = ExifBlock.usual("2026:05:29 %s:%02d".formatted(VISITS[visit], 2 * (i % 3)));
      files[i] =
          new FilePayload(
              "IMG_0%d0%d.JPG".formatted(visit + 1, i % 3 + 1),
              "image/jpeg",
              RenderedMoon.jpeg(scene, exif));
    }
    return files;
  }
}
