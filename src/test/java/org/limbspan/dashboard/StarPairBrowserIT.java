package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

/** Mizar and Alcor: places of the Hipparcos catalogue, from memory; 708.5 arcseconds apart. */
@BrowserIT
class StarPairBrowserIT {

  @Autowired private RestTestClient http;

  @Test
  void entersAPairByItsCoordinatesWithTheKeyboardAlone(Visitor visitor) {
    RigClient rig = RigClient.described(http, "stars-catalogue");
    Page page = open(visitor, Screen.LAPTOP, "stars-catalogue");
    page.getByText("Enter a calibration by two stars").press("Enter");
    Locator form = form(page);
    form.getByLabel("When the stars were photographed").fill("2024-05-10 23:30");
    assertThat(form.getByLabel("Separation", exactly())).isHidden();
    star(form, "First star", "13h 23m 55.54s", "+54\u00b0 55\u2032 31.3\u2033", "119", "-26");
    star(form, "Second star", "13 25 13.54", "54:59:16.7", "120", "-16");
    form.getByLabel("From star to star in the image", exactly()).fill("708.5");
    form.getByLabel("From star to star in the image, standard uncertainty").fill("0.5");
    form.getByLabel("From star to star in the image, standard uncertainty").press("Enter");

    assertThat(page).hasURL(Pattern.compile("/rig\\?entered=\\d+#calibrations$"));
    // One pixel an arcsecond, less 0.03 percent of air and within 0.01 of aberration.
    assertThat(page.locator(".confirmation"))
        .containsText(Pattern.compile("gives (0\\.999|1\\.000)"));
    assertThat(page.locator("[data-live=setups]"))
        .containsText(Pattern.compile("(0\\.999|1\\.000)\\d* \u00b1 0\\.000\\d+"));
    assertThat(page.locator("[data-live=calibrations]")).containsText("two stars, 11.80");
    assertThat(page.locator("[data-live=calibrations]")).containsText("without air");
    assertThat(rig.get("/calibrations").body().toString()).contains("star-pair");
  }

  @Test
  void entersATypedSeparationOnAPhone(Visitor visitor) {
    RigClient.described(http, "stars-typed");
    Page page = open(visitor, Screen.PHONE, "stars-typed");
    page.getByText("Enter a calibration by two stars").tap();
    Locator form = form(page);
    form.getByLabel("I type the separation").tap();
    assertThat(form.getByRole(AriaRole.GROUP, groupOf("First star"))).isHidden();
    form.getByLabel("When the stars were photographed").fill("2024-05-10 23:30");
    form.getByLabel("Separation", exactly()).fill("708,5");
    form.getByLabel("Separation, standard uncertainty").fill("0.3");
    form.getByLabel("Separation, unit").selectOption("arcsec");
    form.getByLabel("From star to star in the image", exactly()).fill("600");
    form.getByLabel("From star to star in the image, standard uncertainty").fill("0.5");
    form.getByRole(AriaRole.BUTTON).tap();
    // 708.5 / 600
    assertThat(page.locator(".confirmation")).containsText("gives 1.1808 \u00b1 0.0011");
  }

  @Test
  void saysBesideTheFieldWhatIsWrongAndKeepsWhatWasTyped(Visitor visitor) {
    RigClient rig = RigClient.described(http, "stars-slip");
    Page page = open(visitor, Screen.LAPTOP, "stars-slip");
    page.getByText("Enter a calibration by two stars").click();
    Locator form = form(page);
    form.getByLabel("When the stars were photographed").fill("2024-05-10 23:30");
    star(form, "First star", "13h 99m", "+54 55 31", "", "");
    star(form, "Second star", "13 25 13.54", "54:59:16.7", "120", "");
    form.getByRole(AriaRole.BUTTON).click();

    assertThat(page.getByRole(AriaRole.ALERT)).containsText("Nothing is entered yet");
    Locator first = page.locator("[id='first.rightAscension']");
    assertThat(first).isVisible();
    assertThat(first).hasValue("13h 99m");
    assertThat(first).hasAttribute("aria-invalid", "true");
    assertThat(page.locator("[id='first.rightAscension-complaint']"))
        .containsText("Expected a right ascension");
    assertThat(page.locator("[id='second.motionEast']")).hasValue("120");
    assertThat(page.locator("[id='starMeasured-complaint']")).isVisible();
    assertThat(rig.get("/calibrations").body().path("calibrations").size()).isZero();
  }

  private static Page open(Visitor visitor, Screen screen, String slug) {
    Page page = visitor.page(screen, "day");
    page.navigate("/rigs/" + slug + "/rig");
    return page;
  }

  private static Locator form(Page page) {
    return page.getByRole(
        AriaRole.FORM, new Page.GetByRoleOptions().setName("A calibration by two stars"));
  }

  private static void star(
      Locator form, String name, String ra, String dec, String east, String north) {
    Locator star = form.getByRole(AriaRole.GROUP, groupOf(name));
    star.getByLabel("Right ascension").fill(ra);
    star.getByLabel("Declination").fill(dec);
    star.getByLabel("Proper motion east").fill(east);
    star.getByLabel("Proper motion north").fill(north);
  }

  private static Locator.GetByRoleOptions groupOf(String name) {
    return new Locator.GetByRoleOptions().setName(name);
  }

  private static Locator.GetByLabelOptions exactly() {
    return new Locator.GetByLabelOptions().setExact(true);
  }
}
