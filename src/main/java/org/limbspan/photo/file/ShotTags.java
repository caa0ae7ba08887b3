package org.limbspan.photo.file;

import com.drew.lang.ByteArrayReader;
import com.drew.metadata.Directory;
import com.drew.metadata.exif.ExifDirectoryBase;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads how a photograph was taken. Source of the tags: Exif 2.32 (CIPA DC-008-2019). */
final class ShotTags {

  private static final DateTimeFormatter CAMERA_CLOCK =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);
  private static final Pattern OFFSET = Pattern.compile("[+-]\\d\\d:\\d\\d");
  private static final Pattern FRACTION = Pattern.compile("\\d{1,9}");
  private static final int LONGEST_NAME = 100;

  private final TagDirectories tags;

  private ShotTags(TagDirectories tags) {
    this.tags = tags;
  }

  /** From an Exif block; it may be empty. */
  static Shot read(byte[] exif) {
    return exif.length < 8 ? Shot.UNTOLD : read(TagDirectories.read(new ByteArrayReader(exif)));
  }

  static Shot read(TagDirectories tags) {
    return new ShotTags(tags).shot();
  }

  private Shot shot() {
    return new Shot(
        taken(),
        offset(),
        positive(ExifDirectoryBase.TAG_FOCAL_LENGTH),
        positive(ExifDirectoryBase.TAG_EXPOSURE_TIME),
        iso(),
        positive(ExifDirectoryBase.TAG_FNUMBER),
        camera(),
        orientation());
  }

  private @Nullable LocalDateTime taken() {
    String told = text(ExifDirectoryBase.TAG_DATETIME_ORIGINAL);
    if (told == null) {
      return null;
    }
    try {
      LocalDateTime second = LocalDateTime.parse(told, CAMERA_CLOCK);
      return second.plusNanos(fractionNanos());
    } catch (DateTimeException notSet) {
      return null;
    }
  }

  private long fractionNanos() {
    String digits = text(ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL);
    return digits != null && FRACTION.matcher(digits).matches()
        ? Long.parseLong((digits + "00000000").substring(0, 9))
        : 0;
  }

  private @Nullable ZoneOffset offset() {
    String told = text(ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL);
    if (told == null || !OFFSET.matcher(told).matches()) {
      return null;
    }
    try {
      return ZoneOffset.of(told);
    } catch (DateTimeException impossible) {
      return null;
    }
  }

  private @Nullable Double positive(int tag) {
    Directory directory = tags.holding(tag);
    Double value = directory == null ? null : directory.getDoubleObject(tag);
    return value != null && value > 0 && value < 1e6 ? value : null;
  }

  private @Nullable Integer iso() {
    Directory directory = tags.holding(ExifDirectoryBase.TAG_ISO_EQUIVALENT);
    Integer value =
        directory == null ? null : directory.getInteger(ExifDirectoryBase.TAG_ISO_EQUIVALENT);
    return value != null && value > 0 && value <= 10_000_000 ? value : null;
  }

  private @Nullable String camera() {
    String make = text(ExifDirectoryBase.TAG_MAKE);
    String model = text(ExifDirectoryBase.TAG_MODEL);
    String name = ((make == null ? "" : make) + " " + (model == null ? "" : model)).strip();
    return name.isEmpty() ? null : name.substring(0, Math.min(LONGEST_NAME, name.length()));
  }

  private Orientation orientation() {
    Directory first = tags.first();
    Integer value = first == null ? null : first.getInteger(ExifDirectoryBase.TAG_ORIENTATION);
    return Orientation.ofTag(value == null ? 1 : value);
  }

  private @Nullable String text(int tag) {
    Directory directory = tags.holding(tag);
    String text = directory == null ? null : directory.getString(tag);
    if (text == null) {
      return null;
    }
    String plain = text.replaceAll("[^\\x20-\\x7e]", "").strip();
    return plain.isEmpty() ? null : plain;
  }
}
