package org.limbspan.photo.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.limb.ToneCurve;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PictureBytes;

class PhotoFileTest {

  private static final byte[] JPEG =
      JpegFile.bytes(new BufferedImage(64, 48, BufferedImage.TYPE_3BYTE_BGR), 90);
  private static final byte[] PNG =
      PictureBytes.png(new BufferedImage(64, 48, BufferedImage.TYPE_3BYTE_BGR));
  private static final byte[] TIFF =
      PictureBytes.tiff(new BufferedImage(64, 48, BufferedImage.TYPE_3BYTE_BGR), "LZW");

  @TempDir private Path folder;

  @Test
  void readsHowAPhotographWasTaken() throws Exception {
    ExifBlock exif =
        ExifBlock.usual("2026:02:01 23:31:58").fraction("25").offset("+01:00").orientation(6);
    Shot shot = header(PictureBytes.jpeg(JPEG, exif)).shot();

    assertThat(shot)
        .isEqualTo(
            new Shot(
                LocalDateTime.of(2026, 2, 1, 23, 31, 58, 250_000_000),
                ZoneOffset.ofHours(1),
                400.0,
                0.004,
                200,
                8.0,
                "Invented Garden camera",
                Orientation.TURNED_RIGHT));
    assertThat(header(PictureBytes.png(PNG, exif)).shot()).isEqualTo(shot);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"0000:00:00 00:00:00", "    :  :     :  :  ", "2026:02:30 23:31:58", "yesterday"})
  void takesAClockThatWasNeverSetForNoTime(String written) throws Exception {
    ExifBlock exif = new ExifBlock().takenAt(written);
    assertThat(header(PictureBytes.jpeg(JPEG, exif)).shot().takenLocal()).isNull();
  }

  @Test
  void knowsNothingOfAPictureWithoutExif() throws Exception {
    assertThat(header(JPEG).shot()).isEqualTo(Shot.UNTOLD);
    assertThat(header(PNG).shot()).isEqualTo(Shot.UNTOLD);
    assertThat(header(TIFF).shot()).isEqualTo(Shot.UNTOLD);
  }

  @Test
  void turnsTheSizeWithTheOrientation() throws Exception {
    PhotoHeader header = header(PictureBytes.jpeg(JPEG, new ExifBlock().orientation(8)));
    assertThat(header.width()).isEqualTo(48);
    assertThat(header.height()).isEqualTo(64);
  }

  @Test
  void takesAPngOfGammaOneForLinear() throws Exception {
    byte[] linear =
        pngWith(PictureBytes.chunk("gAMA", new byte[] {0, 1, (byte) 0x86, (byte) 0xa0}));
    byte[] usual = pngWith(PictureBytes.chunk("gAMA", new byte[] {0, 0, (byte) 0xb1, (byte) 0x8f}));
    assertThat(header(linear).curve()).isEqualTo(ToneCurve.LINEAR);
    assertThat(header(usual).curve()).isEqualTo(ToneCurve.SRGB);
  }

  @Test
  void refusesAPngBombByItsHeader() throws IOException {
    ByteBuffer head = ByteBuffer.allocate(13).putInt(20_000).putInt(20_000);
    head.put(new byte[] {8, 2, 0, 0, 0});
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(PNG, 0, 8);
    bytes.writeBytes(PictureBytes.chunk("IHDR", head.array()));
    bytes.writeBytes(PictureBytes.chunk("IDAT", new byte[4000]));
    bytes.writeBytes(PictureBytes.chunk("IEND", new byte[0]));

    UnusableFile refused = refusal(bytes.toByteArray());
    assertThat(refused.problem()).isEqualTo(FileProblem.TOO_MANY_PIXELS);
    assertThat(refused.words())
        .contains("20000 x 20000")
        .contains(PhotoLimits.MOST_PIXELS / 1_000_000 + " megapixels");
  }

  @Test
  void allowsWhatHalfOfTheHeapCanHold() {
    assertThat(PhotoLimits.mostPixels(512L << 20)).isBetween(56_000_000L, 59_000_000L);
    assertThat(PhotoLimits.mostPixels(256L << 20)).isBetween(28_000_000L, 30_000_000L);
    assertThat(PhotoLimits.mostPixels(64L << 30)).isEqualTo(100_000_000L);
  }

  @Test
  void refusesAJpegBombByItsFrameHeader() throws IOException {
    byte[] bytes = JPEG.clone();
    int frame = indexOf(bytes, (byte) 0xff, (byte) 0xc0);
    ByteBuffer.wrap(bytes).putShort(frame + 5, (short) 31_000).putShort(frame + 7, (short) 31_000);
    assertThat(refusal(bytes).problem()).isEqualTo(FileProblem.TOO_MANY_PIXELS);
  }

  @Test
  void refusesATiffBombByItsTags() throws IOException {
    byte[] bytes = tiff(new int[][] {{256, 4, 20_000}, {257, 4, 20_000}, {262, 3, 1}});
    assertThat(refusal(bytes).problem()).isEqualTo(FileProblem.TOO_MANY_PIXELS);
  }

  @Test
  void refusesAJpegOfEndlessPasses() throws IOException {
    int scan = indexOf(JPEG, (byte) 0xff, (byte) 0xda);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(JPEG, 0, scan);
    for (int i = 0; i < 1000; i++) {
      bytes.write(JPEG, scan, JPEG.length - 2 - scan);
    }
    bytes.write(JPEG, JPEG.length - 2, 2);
    UnusableFile refused = refusal(bytes.toByteArray());
    assertThat(refused.problem()).isEqualTo(FileProblem.DAMAGED);
    assertThat(refused.words()).contains("more than 64 passes");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.2, 0.5, 0.9, 0.999})
  void tellsAFileThatWasCutOff(double share) throws IOException {
    for (byte[] whole : new byte[][] {JPEG, PNG, TIFF}) {
      byte[] part = Arrays.copyOf(whole, (int) (share * whole.length));
      assertThat(refusal(part).problem()).isEqualTo(FileProblem.TRUNCATED);
    }
  }

  @Test
  void findsAFlippedBitInAPng() throws IOException {
    byte[] bytes = PNG.clone();
    bytes[PNG.length / 2] ^= 4;
    assertThat(refusal(bytes).problem()).isEqualTo(FileProblem.DAMAGED);
  }

  @ParameterizedTest
  @CsvSource({
    // first bytes in hexadecimal, as the makers' files have them: common practice, no source
    "49492a00100000004352020000000000, RAW", // CR2
    "0000001866747970637278200000000163727820, RAW", // CR3
    "0000001866747970686569630000000068656963, RAW", // HEIC
    "46554a4946494c4d4343442d524157203032303146463338, RAW", // RAF
    "4949524f08000000, RAW", // ORF
    "49495500180000008849, RAW", // RW2
    "474946383961, OTHER_FORMAT", // GIF
    "424d36040000, OTHER_FORMAT", // BMP
    "48656c6c6f2c204d6f6f6e2e, NOT_AN_IMAGE",
    "00, NOT_AN_IMAGE"
  })
  void tellsAFileByItsFirstBytes(String hex, FileProblem expected) throws IOException {
    byte[] head = HexFormat.of().parseHex(hex.replace(" ", ""));
    UnusableFile refused = refusal(Arrays.copyOf(head, 400));
    assertThat(refused.problem()).isEqualTo(expected);
  }

  @Test
  void refusesAnEmptyFile() throws IOException {
    assertThat(refusal(new byte[0]).problem()).isEqualTo(FileProblem.NOT_AN_IMAGE);
  }

  @Test
  void knowsARawFileInTheCoatOfATiffByItsMosaic() throws IOException {
    // TIFF/EP (ISO 12234-2): 32803 is a colour filter array; DNG 1.6: tag 50706 is its version
    byte[] mosaic = tiff(new int[][] {{256, 4, 160}, {257, 4, 120}, {262, 3, 32803}});
    byte[] dng = tiff(new int[][] {{256, 4, 160}, {257, 4, 120}, {262, 3, 2}, {50706, 1, 1}});
    assertThat(refusal(mosaic).problem()).isEqualTo(FileProblem.RAW);
    assertThat(refusal(dng).problem()).isEqualTo(FileProblem.RAW);
    assertThat(refusal(dng).words()).contains("TIFF of 16 bits").contains("JPEG");
  }

  @Test
  void refusesPalettesAndFewBits() throws IOException {
    byte[] palette = PictureBytes.png(new BufferedImage(64, 48, BufferedImage.TYPE_BYTE_INDEXED));
    byte[] bits = PictureBytes.png(new BufferedImage(64, 48, BufferedImage.TYPE_BYTE_BINARY));
    assertThat(refusal(palette).problem()).isEqualTo(FileProblem.UNUSUAL_SAMPLES);
    assertThat(refusal(bits).problem()).isEqualTo(FileProblem.UNUSUAL_SAMPLES);
  }

  @Test
  void refusesAPictureOfText() throws IOException {
    byte[] text = "JPEG".getBytes(StandardCharsets.US_ASCII);
    assertThat(refusal(text).words()).contains("not a picture");
  }

  private PhotoHeader header(byte[] bytes) throws IOException, UnusableFile {
    return PhotoFile.header(Files.write(folder.resolve("picture"), bytes));
  }

  private UnusableFile refusal(byte[] bytes) throws IOException {
    Path file = Files.write(folder.resolve("picture"), bytes);
    return catchThrowableOfType(UnusableFile.class, () -> PhotoFile.header(file));
  }

  private static byte[] pngWith(byte[] chunk) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(PNG, 0, 33);
    bytes.writeBytes(chunk);
    bytes.write(PNG, 33, PNG.length - 33);
    return bytes.toByteArray();
  }

  /** A little-endian TIFF file of one directory; each tag is id, type and one value. */
  private static byte[] tiff(int[][] tags) {
    ByteBuffer bytes = ByteBuffer.allocate(400).order(ByteOrder.LITTLE_ENDIAN);
    bytes.put(new byte[] {'I', 'I', 42, 0}).putInt(8).putShort((short) tags.length);
    for (int[] tag : tags) {
      bytes.putShort((short) tag[0]).putShort((short) tag[1]).putInt(1).putInt(tag[2]);
    }
    return bytes.array();
  }

  private static int indexOf(byte[] bytes, byte first, byte second) {
    for (int i = 0; i + 1 < bytes.length; i++) {
      if (bytes[i] == first && bytes[i + 1] == second) {
        return i;
      }
    }
    throw new AssertionError("no such marker");
  }
}
