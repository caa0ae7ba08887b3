package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.limbspan.demo.Demo;
import org.limbspan.testing.browser.Accessibility;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;

/** Every page, filled by the demo's invented rig, in each light and on both screens. */
@BrowserIT
class AccessibilityBrowserIT {

  /** {@code {rig}} stands for the demo's short name. */
  private static final String[] PAGES = {
    "/contents",
    "/rigs/new",
    "/rigs/no-such-rig",
    "/hypotheses",
    "/how-to",
    "/how-to/shooting",
    "/how-to/calibrating",
    "/how-to/protractor",
    "/how-to/bearing-card",
    "/how-to/plots",
    "/rigs/{rig}",
    "/rigs/{rig}/tonight",
    "/rigs/{rig}/log",
    "/rigs/{rig}/cycle",
    "/rigs/{rig}/nights",
    "/rigs/{rig}/conclusions",
    "/rigs/{rig}/conclusions?own=true",
    "/rigs/{rig}/letter",
    "/rigs/{rig}/share",
    "/rigs/{rig}/rig",
    "/rigs/{rig}/alerts",
    "/rigs/{rig}/notices",
  };

  @Autowired private Demo demo;

  static Stream<Arguments> pagesOnScreens() {
    return Stream.of(PAGES)
        .flatMap(path -> Stream.of(Screen.values()).map(screen -> Arguments.of(path, screen)));
  }

  @ParameterizedTest(name = "{0} on the {1}")
  @MethodSource("pagesOnScreens")
  void hasNoGraveFindingAndFitsTheScreen(String path, Screen screen, Visitor visitor) {
    Page page = visitor.page(screen, "day");
    page.navigate(path.replace("{rig}", demo.enter().slug()));
    assertThat(Accessibility.graveFindings(page)).as("by day").isEmpty();
    assertThat(page.evaluate("document.documentElement.scrollWidth"))
        .as("width in px")
        .isEqualTo(screen.widthPx());
    light(page, "night");
    assertThat(Accessibility.graveFindingsOfColour(page)).as("by night").isEmpty();
    light(page, "darkest");
    // This light gives up contrast on purpose, for eyes that are fully adapted.
    assertThat(Accessibility.graveFindingsOfColour(page, "color-contrast"))
        .as("in the darkest light")
        .isEmpty();
  }

  @Test
  void wouldNoticeAPictureWithoutWords(Visitor visitor) {
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/new");
    page.evaluate("document.querySelector('main').append(new Image(90, 90))");
    assertThat(Accessibility.graveFindings(page)).singleElement().asString().contains("image-alt");
  }

  private static void light(Page page, String label) {
    page.locator("button[name=light][value=" + label + "]").click();
    assertThat(page.evaluate("document.documentElement.dataset.light")).isEqualTo(label);
  }
}
