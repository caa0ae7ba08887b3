package org.limbspan.photo.file;

import java.io.EOFException;
import java.io.IOException;
import java.util.zip.CRC32;
import org.limbspan.limb.ToneCurve;

/**
 * A PNG file's chunks with their checksums, from first to last, without inflating any of them.
 *
 * <p>Source: ISO/IEC 15948:2004 (PNG) and the W3C's third edition for {@code eXIf}.
 */
final class PngHeader {

  private static final int IHDR = 0x49484452;
  private static final int IDAT = 0x49444154;
  private static final int IEND = 0x49454e44;
  private static final int GAMA = 0x67414d41;
  private static final int EXIF = 0x65584966;

  /** A gamma of 1 in the chunk's unit, hundred-thousandths; and how near to it counts as 1. */
  private static final int GAMMA_ONE = 100_000;

  private static final int GAMMA_TOLERANCE = 1000;

  private final ByteFeed feed;
  private int width;
  private int height;
  private int bits;
  private int colourType;
  private boolean data;
  private ToneCurve curve = ToneCurve.SRGB;
  private byte[] exif = new byte[0];

  private PngHeader(ByteFeed feed) {
    this.feed = feed;
  }

  static PngHeader read(ByteFeed feed) throws IOException, UnusableFile {
    PngHeader header = new PngHeader(feed);
    try {
      header.walk();
    } catch (EOFException endOfFile) {
      throw UnusableFile.truncated();
    }
    return header;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  int bits() {
    return bits;
  }

  int bands() {
    return switch (colourType) {
      case 2 -> 3;
      case 4 -> 2;
      case 6 -> 4;
      default -> 1;
    };
  }

  ToneCurve curve() {
    return curve;
  }

  /** The Exif block from its TIFF header on; empty if there is none. */
  byte[] exif() {
    return exif;
  }

  private void walk() throws IOException, UnusableFile {
    feed.skip(8);
    int type = 0;
    while (type != IEND) {
      int length = feed.nextInt();
      type = feed.nextInt();
      if (length < 0) {
        throw UnusableFile.damaged("a chunk has an impossible length");
      }
      if (width == 0 && type != IHDR) {
        throw UnusableFile.damaged("it does not begin with its header");
      }
      readChunk(type, length);
    }
    if (!data) {
      throw UnusableFile.damaged("there is no picture in it");
    }
  }

  private void readChunk(int type, int length) throws IOException, UnusableFile {
    CRC32 sum = new CRC32();
    for (int shift = 24; shift >= 0; shift -= 8) {
      sum.update(type >>> shift & 0xff);
    }
    boolean kept =
        (type == IHDR && length == 13)
            || (type == GAMA && length == 4)
            || (type == EXIF && length <= PhotoLimits.LONGEST_EXIF_BYTES);
    byte[] chunk = new byte[0];
    if (kept) {
      chunk = feed.next(length);
      sum.update(chunk);
    } else {
      feed.skip(length, sum);
    }
    if (feed.nextInt() != (int) sum.getValue()) {
      throw UnusableFile.damaged("a checksum does not agree");
    }
    take(type, chunk, kept);
  }

  private void take(int type, byte[] chunk, boolean kept) throws UnusableFile {
    if (type == IDAT) {
      data = true;
    } else if (type == IHDR) {
      takeHeader(chunk);
    } else if (type == GAMA && kept) {
      boolean linear = Math.abs(intAt(chunk, 0) - GAMMA_ONE) < GAMMA_TOLERANCE;
      curve = linear ? ToneCurve.LINEAR : ToneCurve.SRGB;
    } else if (type == EXIF && kept) {
      exif = chunk;
    }
  }

  private void takeHeader(byte[] chunk) throws UnusableFile {
    if (chunk.length != 13 || width != 0) {
      throw UnusableFile.damaged("its header is impossible");
    }
    PhotoLimits.requirePixels(
        Integer.toUnsignedLong(intAt(chunk, 0)), Integer.toUnsignedLong(intAt(chunk, 4)));
    width = intAt(chunk, 0);
    height = intAt(chunk, 4);
    bits = chunk[8];
    colourType = chunk[9];
    if (colourType == 3 || (bits != 8 && bits != 16)) {
      throw UnusableFile.unusualSamples(
          colourType == 3 ? "a palette" : "samples of " + bits + " bits");
    }
  }

  private static int intAt(byte[] bytes, int at) {
    return (bytes[at] & 0xff) << 24
        | (bytes[at + 1] & 0xff) << 16
        | (bytes[at + 2] & 0xff) << 8
        | (bytes[at + 3] & 0xff);
  }
}
