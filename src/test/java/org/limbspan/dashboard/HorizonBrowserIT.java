package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;

@BrowserIT
class HorizonBrowserIT {

  @Test
  void drawsTheLineThatWasTyped(Visitor visitor) {
    Page page = visitor.page(Screen.LAPTOP);
    enterRig(page, "Invented valley");
    page.navigate("/rigs/invented-valley/tonight");
    assertThat(page.locator(".arc .way")).hasCount(1);
    assertThat(page.locator(".arc .own-line")).hasCount(0);
    page.navigate("/rigs/invented-valley/rig");
    points(page).fill("0 3\n90 8,5\n180 4\n270 6");
    button(page, "Enter the line").click();
    assertThat(page).hasURL(Pattern.compile("/rig#horizon-line$"));
    assertThat(page.getByText("4 points; the highest stands 8.5\u00b0")).isVisible();
    assertThat(points(page)).hasValue("0 3\n90 8.5\n180 4\n270 6");
    page.navigate("/rigs/invented-valley/tonight");
    assertThat(page.locator(".arc .own-line")).hasAttribute("d", Pattern.compile("^M\\d.*L\\d"));
    assertThat(page.locator("#arc-caption")).containsText("the horizon entered for this rig");
    assertThat(page.locator("#arc-summary")).containsText("the line entered for this rig");
    page.navigate("/rigs/invented-valley/rig");
    page.getByText("Take the line back").click();
    button(page, "Take it back").click();
    assertThat(page.getByText("No line is entered")).isVisible();
    assertThat(points(page)).hasValue("");
  }

  @Test
  void isToldInItsPlaceWhichLineIsWrong(Visitor visitor) {
    Page page = visitor.page(Screen.PHONE);
    enterRig(page, "Invented ridge");
    page.navigate("/rigs/invented-ridge/rig");
    points(page).fill("0 3\n90 95\n180 4");
    button(page, "Enter the line").tap();
    assertThat(page.locator("#horizon-complaint"))
        .hasText("Line 2: altitude is \u201895\u2019; expected 0 to 90 degrees.");
    assertThat(points(page)).hasAttribute("aria-invalid", "true");
    assertThat(points(page)).hasValue("0 3\n90 95\n180 4");
    assertThat(page.getByText("No line is entered")).isVisible();
  }

  private static void enterRig(Page page, String name) {
    page.navigate("/rigs/new");
    page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true)).fill(name);
    page.getByLabel("Latitude").fill("47.5");
    page.getByLabel("Longitude").fill("9.5");
    page.getByLabel("Elevation").fill("430");
    page.getByLabel("Time zone").fill("Europe/Zurich");
    button(page, "Enter the rig").click();
    assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
        .hasText(name);
  }

  private static Locator points(Page page) {
    return page.getByLabel("Points around the compass");
  }

  private static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }
}
