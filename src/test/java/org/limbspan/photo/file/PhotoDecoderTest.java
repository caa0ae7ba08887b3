package org.limbspan.photo.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.WritableRaster;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.limbspan.limb.LinearImage;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PictureBytes;

class PhotoDecoderTest {

  private static final int WIDTH = 37;
  private static final int HEIGHT = 23;

  /** Three rows of a picture of three channels, so that bands have to be joined. */
  private static final int SMALL_BAND_BYTES = 3 * WIDTH * 3;

  @TempDir private Path folder;

  static Stream<Arguments> losslessFiles() {
    return Stream.of("png", "none", "LZW", "ZLib", "PackBits")
        .flatMap(
            kind ->
                Stream.of(1, 3, 4)
                    .flatMap(
                        bands -> Stream.of(8, 16).map(bits -> Arguments.of(kind, bands, bits))));
  }

  @ParameterizedTest
  @MethodSource("losslessFiles")
  void givesEverySampleOfALosslessFile(String kind, int bands, int bits) throws Exception {
    BufferedImage image = noise(bands, bits);
    byte[] bytes = kind.equals("png") ? PictureBytes.png(image) : PictureBytes.tiff(image, kind);
    Path file = Files.write(folder.resolve("picture"), bytes);
    PhotoHeader header = PhotoFile.header(file);

    assertThat(header.width()).isEqualTo(WIDTH);
    assertThat(header.height()).isEqualTo(HEIGHT);
    assertThat(header.bits()).isEqualTo(bits);
    assertThat(decode(file, header, PhotoLimits.BAND_BYTES)).isDeepEqualTo(samples(image));
    assertThat(decode(file, header, SMALL_BAND_BYTES)).isDeepEqualTo(samples(image));
  }

  static IntStream orientations() {
    return IntStream.rangeClosed(1, 8);
  }

  @ParameterizedTest
  @MethodSource("orientations")
  void setsThePictureUpright(int tag) throws Exception {
    BufferedImage image = noise(3, 8);
    byte[] bytes = PictureBytes.png(PictureBytes.png(image), new ExifBlock().orientation(tag));
    Path file = Files.write(folder.resolve("picture.png"), bytes);
    PhotoHeader header = PhotoFile.header(file);

    int[][] upright = decode(file, header, SMALL_BAND_BYTES);
    int[][] stored = samples(image);
    assertThat(upright.length).isEqualTo(tag < 5 ? HEIGHT : WIDTH);
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        int[] place = upright(tag, x, y);
        for (int band = 0; band < 3; band++) {
          assertThat(upright[place[1]][3 * place[0] + band]).isEqualTo(stored[y][3 * x + band]);
        }
      }
    }
  }

  @Test
  void givesAJpegWithinItsQuantisation() throws Exception {
    BufferedImage image = gradient();
    Path file = Files.write(folder.resolve("picture.jpg"), JpegFile.bytes(image, 98));
    PhotoHeader header = PhotoFile.header(file);

    int[][] decoded = decode(file, header, SMALL_BAND_BYTES);
    int[][] truth = samples(image);
    for (int y = 0; y < HEIGHT; y++) {
      for (int i = 0; i < decoded[y].length; i++) {
        assertThat(decoded[y][i]).isBetween(truth[y][i] - 6, truth[y][i] + 6);
      }
    }
  }

  @Test
  void decodesIntoLinearLight() throws Exception {
    Path file = Files.write(folder.resolve("picture.png"), PictureBytes.png(noise(3, 16)));
    LinearImage image = PhotoDecoder.decode(file, PhotoFile.header(file));
    assertThat(image.width()).isEqualTo(WIDTH);
    assertThat(image.height()).isEqualTo(HEIGHT);
  }

  /** Where a stored pixel lies in the upright picture, by the wording of Exif 2.32 for tag 274. */
  private static int[] upright(int tag, int x, int y) {
    return switch (tag) {
      case 1 -> new int[] {x, y};
      case 2 -> new int[] {WIDTH - 1 - x, y};
      case 3 -> new int[] {WIDTH - 1 - x, HEIGHT - 1 - y};
      case 4 -> new int[] {x, HEIGHT - 1 - y};
      // from 5 on the 0th row is a side: left, right, right, left
      case 5 -> new int[] {y, x};
      case 6 -> new int[] {HEIGHT - 1 - y, x};
      case 7 -> new int[] {HEIGHT - 1 - y, WIDTH - 1 - x};
      default -> new int[] {y, WIDTH - 1 - x};
    };
  }

  private static int[][] decode(Path file, PhotoHeader header, int bandBytes) throws Exception {
    int[][] rows = new int[header.height()][];
    PhotoDecoder.decode(
        file,
        header,
        bandBytes,
        (y, samples, bands) -> {
          assertThat(rows[y]).isNull();
          rows[y] = Arrays.copyOf(samples, header.width() * bands);
        });
    return rows;
  }

  private static int[][] samples(BufferedImage image) {
    int[][] rows = new int[HEIGHT][];
    for (int y = 0; y < HEIGHT; y++) {
      rows[y] = image.getRaster().getPixels(0, y, WIDTH, 1, (int[]) null);
    }
    return rows;
  }

  private static BufferedImage noise(int bands, int bits) {
    int space = bands == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB;
    boolean alpha = bands == 4;
    ComponentColorModel model =
        new ComponentColorModel(
            ColorSpace.getInstance(space),
            alpha,
            false,
            alpha ? Transparency.TRANSLUCENT : Transparency.OPAQUE,
            bits == 8 ? DataBuffer.TYPE_BYTE : DataBuffer.TYPE_USHORT);
    WritableRaster raster = model.createCompatibleWritableRaster(WIDTH, HEIGHT);
    Random random = new Random(bands * 100L + bits);
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        for (int band = 0; band < bands; band++) {
          raster.setSample(x, y, band, random.nextInt(1 << bits));
        }
      }
    }
    return new BufferedImage(model, raster, false, null);
  }

  private static BufferedImage gradient() {
    BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        image.setRGB(x, y, (40 + 4 * x) << 16 | (30 + 5 * y) << 8 | (60 + 2 * x + 2 * y));
      }
    }
    return image;
  }
}
