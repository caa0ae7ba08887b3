package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.limbspan.demo.Demo;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.browser.Accessibility;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

/** Every page, filled by the demo's invented rig, in each light. */
@BrowserIT
class AccessibilityBrowserIT {

  /** {@code {rig}} stands for the demo's short name, {@code {reading}} for its first reading. */
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
    "/rigs/{rig}/readings/{reading}",
    "/rigs/{rig}/notices",
  };

  @Autowired private Demo demo;
  @Autowired private RestTestClient http;

  static Stream<Arguments> pagesInLights() {
    return Stream.of(PAGES)
        .flatMap(path -> Stream.of("day", "night", "darkest").map(l -> Arguments.of(path, l)));
  }

  /** One visit a page and light; by night from the laptop, so that both layouts are judged. */
  @ParameterizedTest(name = "{0} by {1}")
  @MethodSource("pagesInLights")
  void hasNoGraveFindingAndFitsTheScreens(String path, String light, Visitor visitor) {
    boolean laptop = light.equals("night");
    Page page = visitor.page(laptop ? Screen.LAPTOP : Screen.PHONE, light);
    RigClient rig = new RigClient(http, demo.enter().slug());
    page.navigate(path.replace("{rig}", rig.slug()).replace("{reading}", aReading(rig)));
    assertThat(page.evaluate("document.documentElement.dataset.light")).isEqualTo(light);
    assertThat(Accessibility.graveFindings(page)).isEmpty();
    assertThat(page.evaluate("document.documentElement.scrollWidth"))
        .as("width in px")
        .isEqualTo((laptop ? Screen.LAPTOP : Screen.PHONE).widthPx());
  }

  private static String aReading(RigClient rig) {
    return rig.get("/readings?limit=1").body().path("readings").get(0).path("id").asString();
  }

  @Test
  void wouldNoticeAPictureWithoutWords(Visitor visitor) {
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/new");
    page.evaluate("document.querySelector('main').append(new Image(90, 90))");
    assertThat(Accessibility.graveFindings(page)).singleElement().asString().contains("image-alt");
  }
}
