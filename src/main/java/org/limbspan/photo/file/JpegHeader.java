package org.limbspan.photo.file;

import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A JPEG file's markers, from its first byte to the end of its picture, without decoding any of it.
 *
 * <p>Source: ITU-T T.81, annex B.
 */
final class JpegHeader {

  private static final int START_OF_IMAGE = 0xd8;
  private static final int END_OF_IMAGE = 0xd9;
  private static final int START_OF_SCAN = 0xda;
  private static final int FIRST_FRAME = 0xc0;
  private static final int LAST_FRAME = 0xcf;
  private static final int HUFFMAN_TABLES = 0xc4;
  private static final int RESERVED = 0xc8;
  private static final int ARITHMETIC_CONDITIONING = 0xcc;
  private static final int PROGRESSIVE = 0xc2;
  private static final int FIRST_RESTART = 0xd0;
  private static final int LAST_RESTART = 0xd7;
  private static final int APPLICATION_1 = 0xe1;
  private static final int TEMPORARY = 0x01;
  private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.ISO_8859_1);

  private final ByteFeed feed;
  private int scans;
  private int components;
  private int width;
  private int height;
  private byte @Nullable [] exif;

  private JpegHeader(ByteFeed feed) {
    this.feed = feed;
  }

  static JpegHeader read(ByteFeed feed) throws IOException, UnusableFile {
    JpegHeader header = new JpegHeader(feed);
    try {
      header.walk();
    } catch (EOFException endOfFile) {
      throw UnusableFile.truncated();
    }
    if (header.scans == 0) {
      throw UnusableFile.damaged("there is no picture in it");
    }
    return header;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** 1 for grey, 3 for colour. */
  int components() {
    return components;
  }

  /** The Exif block from its TIFF header on; empty if there is none. */
  byte[] exif() {
    return exif == null ? new byte[0] : exif;
  }

  private void walk() throws IOException, UnusableFile {
    feed.next(2);
    int marker = nextMarker(feed.next());
    while (marker != END_OF_IMAGE) {
      if (marker == START_OF_SCAN) {
        marker = passScan();
      } else {
        if (!isAlone(marker)) {
          readSegment(marker);
        }
        marker = nextMarker(feed.next());
      }
    }
  }

  /** The next marker from a byte on; what does not belong to any is passed over. */
  private int nextMarker(int first) throws IOException {
    int code = first;
    while (true) {
      while (code != 0xff) {
        code = feed.next();
      }
      while (code == 0xff) {
        code = feed.next();
      }
      if (code != 0) {
        return code;
      }
    }
  }

  private static boolean isAlone(int marker) {
    return marker == START_OF_IMAGE
        || marker == TEMPORARY
        || (marker >= FIRST_RESTART && marker <= LAST_RESTART);
  }

  /** Passes over a scan and its coded data; gives the marker behind it. */
  private int passScan() throws IOException, UnusableFile {
    if (components == 0) {
      throw UnusableFile.damaged("its picture has no frame header");
    }
    if (++scans > PhotoLimits.MOST_SCANS) {
      throw UnusableFile.damaged(
          "its picture is coded in more than " + PhotoLimits.MOST_SCANS + " passes");
    }
    feed.skip(segmentLength());
    int marker = nextMarker(feed.next());
    while (marker >= FIRST_RESTART && marker <= LAST_RESTART) {
      marker = nextMarker(feed.next());
    }
    return marker;
  }

  private void readSegment(int marker) throws IOException, UnusableFile {
    int length = segmentLength();
    boolean frame =
        marker >= FIRST_FRAME
            && marker <= LAST_FRAME
            && marker != HUFFMAN_TABLES
            && marker != RESERVED
            && marker != ARITHMETIC_CONDITIONING;
    if (frame) {
      readFrame(marker, length);
    } else if (marker == APPLICATION_1 && exif == null && length > EXIF.length) {
      readExif(length);
    } else {
      feed.skip(length);
    }
  }

  private int segmentLength() throws IOException, UnusableFile {
    int length = feed.nextShort() - 2;
    if (length < 0) {
      throw UnusableFile.damaged("a segment has an impossible length");
    }
    return length;
  }

  private void readFrame(int marker, int length) throws IOException, UnusableFile {
    if (length < 6 || components != 0) {
      throw UnusableFile.damaged("its frame header is impossible");
    }
    int bits = feed.next();
    height = feed.nextShort();
    width = feed.nextShort();
    components = feed.next();
    feed.skip(length - 6L);
    PhotoLimits.requirePixels(width, height);
    if (marker > PROGRESSIVE || bits != 8) {
      throw UnusableFile.unusualSamples(bits + " bits in a rarely used kind of JPEG");
    }
    if (components != 1 && components != 3) {
      throw UnusableFile.unusualSamples(components + " channels");
    }
  }

  private void readExif(int length) throws IOException {
    byte[] segment = feed.next(length);
    if (Arrays.equals(segment, 0, EXIF.length, EXIF, 0, EXIF.length)) {
      exif = Arrays.copyOfRange(segment, EXIF.length, length);
    }
  }
}
