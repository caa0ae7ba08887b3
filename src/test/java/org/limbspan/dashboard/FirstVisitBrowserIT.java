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
class FirstVisitBrowserIT {

  @Test
  void describesARigAndSeesItsLedger(Visitor visitor) {
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/new");
    page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true)).fill("Invented hedge");
    assertThat(page.getByLabel("Short name")).hasValue("invented-hedge");
    page.getByLabel("Latitude").fill("47\u00b0 30\u2032 N");
    page.getByLabel("Longitude").fill("9.5");
    page.getByLabel("Elevation").fill("430");
    page.getByLabel("Time zone").fill("Europe/Zurich");
    button(page, "Enter the rig").click();
    assertThat(page).hasURL(Pattern.compile("/rigs/invented-hedge$"));
    assertThat(page.getByRole(AriaRole.HEADING, level(1))).hasText("Invented hedge");
    assertThat(page.getByText("No reading is entered yet")).isVisible();
  }

  @Test
  void isToldOnAPhoneWhatIsWrongAndWhere(Visitor visitor) {
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/new");
    page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true)).fill("Invented marsh");
    page.getByLabel("Latitude").fill("somewhere north");
    button(page, "Enter the rig").tap();
    assertThat(page.getByRole(AriaRole.ALERT)).containsText("Nothing is entered yet");
    assertThat(page.getByLabel("Latitude")).hasValue("somewhere north");
    assertThat(page.getByLabel("Latitude")).hasAttribute("aria-invalid", "true");
  }

  @Test
  void keepsTheNightLightFromPageToPage(Visitor visitor) {
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/new");
    button(page, "night").tap();
    assertThat(button(page, "night")).hasAttribute("aria-pressed", "true");
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Contents")).tap();
    assertThat(page.locator("html")).hasAttribute("data-light", "night");
  }

  private static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static Page.GetByRoleOptions level(int level) {
    return new Page.GetByRoleOptions().setLevel(level);
  }
}
