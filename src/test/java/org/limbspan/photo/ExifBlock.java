package org.limbspan.photo;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Writes the Exif block that a camera would: big-endian, two directories. */
public final class ExifBlock {

  private static final int ASCII = 2;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int RATIONAL = 5;
  private static final int HEADER = 8;

  private static final class Tag {

    private final int id;
    private final int type;
    private final int count;
    private final byte[] value;

    Tag(int id, int type, int count, byte[] value) {
      this.id = id;
      this.type = type;
      this.count = count;
      this.value = value;
    }
  }

  private final List<Tag> first = new ArrayList<>();
  private final List<Tag> exif = new ArrayList<>();

  /** The camera of an invented rig, as it takes the Moon. */
  public static ExifBlock usual(String takenAt) {
    return new ExifBlock()
        .camera("Invented", "Garden camera")
        .takenAt(takenAt)
        .focalLengthMm(400)
        .exposure(1, 250)
        .iso(200)
        .fNumber(8);
  }

  public ExifBlock camera(String make, String model) {
    first.add(text(271, make));
    first.add(text(272, model));
    return this;
  }

  public ExifBlock orientation(int value) {
    first.add(new Tag(274, SHORT, 1, new byte[] {0, (byte) value, 0, 0}));
    return this;
  }

  /** As {@code 2026:02:01 23:31:58}. */
  public ExifBlock takenAt(String local) {
    exif.add(text(36867, local));
    return this;
  }

  public ExifBlock fraction(String digits) {
    exif.add(text(37521, digits));
    return this;
  }

  /** As {@code +01:00}. */
  public ExifBlock offset(String offset) {
    exif.add(text(36881, offset));
    return this;
  }

  public ExifBlock focalLengthMm(double value) {
    exif.add(rational(37386, (int) Math.round(value * 10), 10));
    return this;
  }

  public ExifBlock exposure(int numerator, int denominator) {
    exif.add(rational(33434, numerator, denominator));
    return this;
  }

  public ExifBlock iso(int value) {
    exif.add(new Tag(34855, SHORT, 1, new byte[] {(byte) (value >> 8), (byte) value, 0, 0}));
    return this;
  }

  public ExifBlock fNumber(double value) {
    exif.add(rational(33437, (int) Math.round(value * 10), 10));
    return this;
  }

  /** From the TIFF header on. */
  public byte[] bytes() {
    int firstSize = directorySize(first.size() + 1);
    int exifAt = HEADER + firstSize + valueSize(first);
    List<Tag> withPointer = new ArrayList<>(first);
    withPointer.add(new Tag(34665, LONG, 1, ByteBuffer.allocate(4).putInt(exifAt).array()));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {'M', 'M', 0, 42, 0, 0, 0, HEADER});
    out.writeBytes(directory(withPointer, HEADER));
    out.writeBytes(directory(exif, exifAt));
    return out.toByteArray();
  }

  private static byte[] directory(List<Tag> tags, int at) {
    ByteBuffer entries = ByteBuffer.allocate(directorySize(tags.size()));
    ByteArrayOutputStream values = new ByteArrayOutputStream();
    entries.putShort((short) tags.size());
    tags.stream()
        .sorted((a, b) -> a.id - b.id)
        .forEach(
            tag -> {
              entries.putShort((short) tag.id).putShort((short) tag.type).putInt(tag.count);
              if (tag.value.length <= 4) {
                entries.put(copy(tag.value, 4));
              } else {
                entries.putInt(at + directorySize(tags.size()) + values.size());
                values.writeBytes(tag.value);
              }
            });
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(entries.array());
    out.writeBytes(values.toByteArray());
    return out.toByteArray();
  }

  private static int directorySize(int tags) {
    return 2 + 12 * tags + 4;
  }

  private static int valueSize(List<Tag> tags) {
    return tags.stream().mapToInt(tag -> tag.value.length > 4 ? tag.value.length : 0).sum();
  }

  /** Padded to an even length above 4 bytes, so that it never stands in the entry itself. */
  private static Tag text(int id, String text) {
    byte[] value = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    int length = Math.max(6, value.length + value.length % 2);
    return new Tag(id, ASCII, value.length < 5 ? length : value.length, copy(value, length));
  }

  private static byte[] copy(byte[] value, int length) {
    return Arrays.copyOf(value, length);
  }

  private static Tag rational(int id, int numerator, int denominator) {
    return new Tag(
        id, RATIONAL, 1, ByteBuffer.allocate(8).putInt(numerator).putInt(denominator).array());
  }
}
