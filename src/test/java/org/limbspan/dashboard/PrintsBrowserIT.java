package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.limb.render.MoonScene;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PhotoClient;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

/** The photographs of a reading, by day, by night and on paper. */
@BrowserIT
class PrintsBrowserIT {

  private static final double DIAMETER_PX = 420;
  private static final MoonScene SCENE = RenderedMoon.scene(DIAMETER_PX, 101);

  /** Where the limb that was measured is marked, in radii: the line is 3 pixels wide. */
  private static final double BESIDE_FROM = 1.04;

  private static final double BESIDE_TO = 1.08;

  /** Pure red reaches 3 to 1 on black, what is drawn needs (WCAG 2.2, 1.4.11), at #b80000. */
  private static final int LEAST_RED_OF_LINES = 0xb8;

  @Autowired private RestTestClient http;

  @ParameterizedTest
  @ValueSource(strings = {"device", "night", "darkest"})
  void keepToTheRedChannelInTheDark(String light, Visitor visitor) {
    Page page = visitor.page(Screen.LAPTOP, light);
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
    page.navigate(reading("prints-dark-" + light));
    BufferedImage print = print(page);
    assertThat(most(print, rgb -> Math.max(rgb >> 8 & 0xff, rgb & 0xff))).isZero();
    assertThat(most(print, rgb -> rgb >> 16 & 0xff)).isGreaterThanOrEqualTo(LEAST_RED_OF_LINES);
  }

  @ParameterizedTest
  @ValueSource(strings = {"night", "darkest"})
  void showByNightWhereTheLimbWasMeasured(String light, Visitor visitor) {
    Page page = visitor.page(Screen.LAPTOP, light);
    page.navigate(reading("prints-lines-" + light));
    assertThat(mostRedBesideTheLimb(print(page))).isGreaterThanOrEqualTo(LEAST_RED_OF_LINES);
  }

  @Test
  void areNoDarkerOnPaperWhenTheyAreLookedAtByNight(Visitor visitor) {
    String reading = reading("prints-paper");
    Page day = visitor.page(Screen.LAPTOP, "day");
    Page night = visitor.page(Screen.LAPTOP, "night");
    Page.EmulateMediaOptions paper = new Page.EmulateMediaOptions().setMedia(Media.PRINT);
    for (Page page : new Page[] {day, night}) {
      page.emulateMedia(paper);
      page.navigate(reading);
    }
    BufferedImage expected = print(day);
    assertThat(most(expected, rgb -> rgb & 0xff)).isGreaterThan(100);
    assertThat(pixels(print(night)).toArray()).isEqualTo(pixels(expected).toArray());
  }

  private String reading(String slug) {
    RigClient rig = RigClient.described(http, slug);
    long id =
        new PhotoClient(http, rig)
            .send(
                "",
                "IMG_0101.JPG",
                RenderedMoon.jpeg(SCENE, ExifBlock.usual("2026:05:29 21:10:00")))
            .path("readingId")
            .asLong();
    return "/rigs/" + slug + "/readings/" + id;
  }

  private static BufferedImage print(Page page) {
    Locator picture = page.locator(".print .picture");
    page.waitForFunction(
        "() => [...document.querySelectorAll('.print img')].every(i => i.complete && i.naturalWidth)");
    picture.evaluate("picture => picture.style.borderColor = 'transparent'");
    try {
      return ImageIO.read(new ByteArrayInputStream(picture.screenshot()));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static int most(BufferedImage print, IntUnaryOperator part) {
    return pixels(print).map(part).max().orElseThrow();
  }

  private static IntStream pixels(BufferedImage print) {
    int width = print.getWidth();
    return IntStream.range(0, width * print.getHeight())
        .map(i -> print.getRGB(i % width, i / width));
  }

  private static int mostRedBesideTheLimb(BufferedImage print) {
    double scale = print.getWidth() / (double) SCENE.width;
    int most = 0;
    for (int y = 0; y < print.getHeight(); y++) {
      for (int x = 0; x < print.getWidth(); x++) {
        double radii =
            Math.hypot(x / scale - SCENE.centreX, y / scale - SCENE.centreY) / (DIAMETER_PX / 2);
        if (radii > BESIDE_FROM && radii < BESIDE_TO) {
          most = Math.max(most, print.getRGB(x, y) >> 16 & 0xff);
        }
      }
    }
    return most;
  }
}
