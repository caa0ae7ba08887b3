package org.limbspan.dashboard;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.testing.browser.BrowserIT;
import org.limbspan.testing.browser.Screen;
import org.limbspan.testing.browser.Visitor;

/**
 * Exif blocks laid out by hand after CIPA DC-008 (Exif 2.32), 4.6.6, and TIFF 6.0, section 2: an
 * invented place 33 degrees 55 minutes 29.64 seconds south, 18 degrees 25 minutes 26.4 seconds
 * east, 45 m above the sea.
 */
@BrowserIT
class PhotoPlaceBrowserIT {

  private static final int RATIONAL = 5;
  private static final int ASCII = 2;

  @ParameterizedTest
  @ValueSource(strings = {"II", "MM"})
  void takesThePlaceFromAPhotographInEitherByteOrder(String order, Visitor visitor) {
    Page page = visitor.page(Screen.PHONE);
    page.navigate("/rigs/new");
    give(page, photograph(order));
    assertThat(page.getByLabel("Latitude")).hasValue("-33.92490");
    assertThat(page.getByLabel("Longitude")).hasValue("18.42400");
    assertThat(page.getByLabel("Elevation")).hasValue("45");
  }

  @Test
  void saysSoWhereAPhotographTellsNoPlace(Visitor visitor) {
    Page page = visitor.page(Screen.LAPTOP);
    page.navigate("/rigs/new");
    give(page, new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff, (byte) 0xd9});
    assertThat(page.getByText("moon.jpg does not say where it was taken.")).isVisible();
    assertThat(page.getByLabel("Latitude")).hasValue("");
  }

  private static void give(Page page, byte[] bytes) {
    page.getByLabel("Or take the place from a photograph")
        .setInputFiles(new FilePayload("moon.jpg", "image/jpeg", bytes));
  }

  private static byte[] photograph(String order) {
    ByteBuffer tiff =
        ByteBuffer.allocate(220)
            .order(order.equals("II") ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    tiff.put(order.getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
    tiff.putShort((short) 1);
    entry(tiff, 0x8825, 4, 1).putInt(26);
    tiff.putInt(0);
    tiff.putShort((short) 5);
    entry(tiff, 1, ASCII, 2).put(new byte[] {'S', 0, 0, 0});
    entry(tiff, 2, RATIONAL, 3).putInt(100);
    entry(tiff, 3, ASCII, 2).put(new byte[] {'E', 0, 0, 0});
    entry(tiff, 4, RATIONAL, 3).putInt(124);
    entry(tiff, 6, RATIONAL, 1).putInt(148);
    tiff.putInt(0);
    tiff.position(100);
    rationals(tiff, 33, 1, 55, 1, 2964, 100, 18, 1, 25, 1, 264, 10, 45, 1);
    ByteBuffer file = ByteBuffer.allocate(tiff.capacity() + 14);
    file.putShort((short) 0xffd8).putShort((short) 0xffe1).putShort((short) 228);
    file.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII)).put(tiff.array());
    return file.array();
  }

  private static ByteBuffer entry(ByteBuffer tiff, int tag, int type, int count) {
    return tiff.putShort((short) tag).putShort((short) type).putInt(count);
  }

  private static void rationals(ByteBuffer tiff, int... numbers) {
    for (int number : numbers) {
      tiff.putInt(number);
    }
  }
}
