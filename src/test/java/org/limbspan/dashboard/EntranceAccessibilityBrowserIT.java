package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.testing.browser.Accessibility;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.test.context.TestPropertySource;

/** What stands before the ledger: the login page, and the first visit, where no rig is entered. */
@BrowserIT
@TestPropertySource(
    properties = "limbspan.owner-password=" + EntranceAccessibilityBrowserIT.PASSWORD)
class EntranceAccessibilityBrowserIT {

  static final String PASSWORD = "earthshine-2031-terminator";

  @ParameterizedTest
  @ValueSource(strings = {"day", "night", "darkest"})
  void hasNoGraveFindingInAnyLight(String light, Visitor visitor) {
    Page page = visitor.page(light.equals("night") ? Screen.LAPTOP : Screen.PHONE, light);
    page.navigate("/login");
    assertThat(Accessibility.graveFindings(page)).as("login").isEmpty();
    page.getByLabel("Password").fill("new moon");
    page.getByLabel("Password").press("Enter");
    assertThat(page.getByText("not the owner")).isVisible();
    assertThat(Accessibility.graveFindings(page)).as("login, refused").isEmpty();
    page.getByLabel("Password").fill(PASSWORD);
    page.getByLabel("Password").press("Enter");
    assertThat(page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Log out")))
        .isVisible();
    assertThat(page.locator("html")).hasAttribute("data-light", light);
    assertThat(Accessibility.graveFindings(page)).as("first visit").isEmpty();
  }
}
