package org.limbspan.photo.file;

import com.drew.lang.RandomAccessFileReader;
import com.drew.metadata.Directory;
import com.drew.metadata.exif.ExifDirectoryBase;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The first picture of a TIFF file as its tags describe it.
 *
 * <p>Source: TIFF 6.0 (1992); DNG 1.6 and TIFF/EP (ISO 12234-2) for what marks a raw file.
 */
final class TiffHeader {

  private static final int DNG_VERSION = 0xc612;
  private static final int COLOUR_FILTER_ARRAY = 32803;
  private static final int LINEAR_RAW = 34892;
  private static final Set<Integer> RAW_COMPRESSIONS = Set.of(32767, 32769, 34713, 65535);

  private static final int BLACK_IS_ZERO = 1;
  private static final int RGB = 2;

  /** None, LZW, Deflate (two codes), PackBits: those without loss. */
  private static final Set<Integer> COMPRESSIONS = Set.of(1, 5, 8, 32946, 32773);

  private final TagDirectories tags;
  private final Directory first;

  private TiffHeader(TagDirectories tags, Directory first) {
    this.tags = tags;
    this.first = first;
  }

  static TiffHeader read(Path file) throws IOException, UnusableFile {
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "r")) {
      TagDirectories tags = TagDirectories.read(new RandomAccessFileReader(bytes));
      Directory first = tags.first();
      if (first == null || !first.containsTag(ExifDirectoryBase.TAG_IMAGE_WIDTH)) {
        throw UnusableFile.truncated();
      }
      TiffHeader header = new TiffHeader(tags, first);
      header.requireDeveloped();
      PhotoLimits.requirePixels(header.width(), header.height());
      header.requireUsualSamples();
      header.requireWhole(bytes.length());
      return header;
    }
  }

  int width() {
    return number(ExifDirectoryBase.TAG_IMAGE_WIDTH, 0);
  }

  int height() {
    return number(ExifDirectoryBase.TAG_IMAGE_HEIGHT, 0);
  }

  int bits() {
    return bitsPerSample()[0];
  }

  int bands() {
    return number(ExifDirectoryBase.TAG_SAMPLES_PER_PIXEL, 1);
  }

  Shot shot() {
    return ShotTags.read(tags);
  }

  private void requireDeveloped() throws UnusableFile {
    for (Directory each : tags.all()) {
      Integer photometric = each.getInteger(ExifDirectoryBase.TAG_PHOTOMETRIC_INTERPRETATION);
      Integer compression = each.getInteger(ExifDirectoryBase.TAG_COMPRESSION);
      boolean mosaic =
          photometric != null && (photometric == COLOUR_FILTER_ARRAY || photometric == LINEAR_RAW);
      if (mosaic
          || each.containsTag(DNG_VERSION)
          || (compression != null && RAW_COMPRESSIONS.contains(compression))) {
        throw FileKind.raw("a camera's raw file");
      }
    }
  }

  private void requireUsualSamples() throws UnusableFile {
    int photometric = number(ExifDirectoryBase.TAG_PHOTOMETRIC_INTERPRETATION, RGB);
    int compression = number(ExifDirectoryBase.TAG_COMPRESSION, 1);
    int[] bits = bitsPerSample();
    if (photometric != BLACK_IS_ZERO && photometric != RGB) {
      throw UnusableFile.unusualSamples("a colour model of kind " + photometric);
    }
    if (!COMPRESSIONS.contains(compression)) {
      throw UnusableFile.unusualSamples("a compression of kind " + compression);
    }
    if (Arrays.stream(bits).distinct().count() != 1 || (bits[0] != 8 && bits[0] != 16)) {
      throw UnusableFile.unusualSamples("samples of " + Arrays.toString(bits) + " bits");
    }
    int bands = bands();
    boolean usual = photometric == RGB ? bands == 3 || bands == 4 : bands == 1 || bands == 2;
    if (!usual || number(ExifDirectoryBase.TAG_SAMPLE_FORMAT, 1) != 1) {
      throw UnusableFile.unusualSamples(bands + " channels, or not whole numbers");
    }
  }

  /** Strips or tiles must lie within the file, and tiles be of a bearable size. */
  private void requireWhole(long fileBytes) throws UnusableFile {
    boolean tiled = first.containsTag(ExifDirectoryBase.TAG_TILE_OFFSETS);
    long[] offsets =
        numbers(tiled ? ExifDirectoryBase.TAG_TILE_OFFSETS : ExifDirectoryBase.TAG_STRIP_OFFSETS);
    long[] counts =
        numbers(
            tiled
                ? ExifDirectoryBase.TAG_TILE_BYTE_COUNTS
                : ExifDirectoryBase.TAG_STRIP_BYTE_COUNTS);
    if (offsets.length == 0 || offsets.length != counts.length) {
      throw UnusableFile.damaged("it does not tell where its picture lies");
    }
    for (int i = 0; i < offsets.length; i++) {
      if (offsets[i] < 0 || counts[i] < 0 || offsets[i] + counts[i] > fileBytes) {
        throw UnusableFile.truncated();
      }
    }
    int tileWidth = number(ExifDirectoryBase.TAG_TILE_WIDTH, 1);
    int tileHeight = number(ExifDirectoryBase.TAG_TILE_LENGTH, 1);
    if (tileWidth < 1
        || tileWidth > PhotoLimits.LONGEST_SIDE_PX
        || tileHeight < 1
        || tileHeight > PhotoLimits.LONGEST_SIDE_PX) {
      throw UnusableFile.damaged("a tile has an impossible size");
    }
  }

  private int[] bitsPerSample() {
    int[] bits = first.getIntArray(ExifDirectoryBase.TAG_BITS_PER_SAMPLE);
    return bits == null || bits.length == 0 ? new int[] {1} : bits;
  }

  private int number(int tag, int otherwise) {
    Integer value = first.getInteger(tag);
    return value == null ? otherwise : value;
  }

  /** Unsigned 32-bit numbers. */
  private long[] numbers(int tag) {
    @Nullable Object value = first.getObject(tag);
    if (value instanceof long[] many) {
      return many;
    }
    if (value instanceof Long one) {
      return new long[] {one};
    }
    int[] whole = first.getIntArray(tag);
    return whole == null
        ? new long[0]
        : Arrays.stream(whole).mapToLong(Integer::toUnsignedLong).toArray();
  }
}
