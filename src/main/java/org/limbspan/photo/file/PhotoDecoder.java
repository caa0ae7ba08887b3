package org.limbspan.photo.file;

import java.awt.Rectangle;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import org.limbspan.limb.LinearImage;

/**
 * Decodes a picture into linear light, upright, band by band.
 *
 * <p>Bands are of whole rows or, where the upright picture lies on its side in the file, of whole
 * columns. Colours are taken as the file has them; a JPEG with a colour profile of its own is
 * turned into sRGB.
 */
public final class PhotoDecoder {

  private PhotoDecoder() {}

  /**
   * The picture of a file whose header was read before.
   *
   * @throws UnusableFile if its pixels cannot be decoded to the last
   * @throws IOException if the file cannot be read
   */
  public static LinearImage decode(Path file, PhotoHeader header) throws IOException, UnusableFile {
    LinearImage.Builder builder =
        LinearImage.builder(header.width(), header.height(), header.bits(), header.curve());
    decode(file, header, PhotoLimits.BAND_BYTES, builder::row);
    return builder.build();
  }

  /** Takes the rows of the upright picture, in whatever order they come. */
  interface Rows {
    /**
     * Takes a row.
     *
     * @param samples those of a pixel side by side; overwritten afterwards
     */
    void take(int y, int[] samples, int bands);
  }

  static void decode(Path file, PhotoHeader header, int bandBytes, Rows rows)
      throws IOException, UnusableFile {
    Picture picture = new Picture(file, header);
    if (header.shot().orientation().isTransposed()) {
      decodeColumns(picture, header, bandBytes, rows);
    } else {
      decodeRows(picture, header, bandBytes, rows);
    }
  }

  private static void decodeRows(Picture picture, PhotoHeader header, int bandBytes, Rows rows)
      throws IOException, UnusableFile {
    int width = header.storedWidth();
    int height = header.storedHeight();
    Orientation orientation = header.shot().orientation();
    int step = lines(header, width, bandBytes);
    for (int from = 0; from < height; from += step) {
      int count = Math.min(step, height - from);
      Raster raster = picture.part(new Rectangle(0, from, width, count));
      SampleLine line = SampleLine.of(raster, width);
      for (int y = 0; y < count; y++) {
        line.readRow(y);
        int[] samples = orientation.isRowReversed() ? line.reversed() : line.samples();
        rows.take(orientation.uprightRow(from + y, height), samples, line.bands());
      }
    }
  }

  private static void decodeColumns(Picture picture, PhotoHeader header, int bandBytes, Rows rows)
      throws IOException, UnusableFile {
    int width = header.storedWidth();
    int height = header.storedHeight();
    Orientation orientation = header.shot().orientation();
    int step = lines(header, height, bandBytes);
    for (int from = 0; from < width; from += step) {
      int count = Math.min(step, width - from);
      Raster raster = picture.part(new Rectangle(from, 0, count, height));
      SampleLine line = SampleLine.of(raster, height);
      for (int x = 0; x < count; x++) {
        line.readColumn(x);
        int[] samples = orientation.isRowReversed() ? line.reversed() : line.samples();
        rows.take(orientation.uprightRow(from + x, width), samples, line.bands());
      }
    }
  }

  /** How many rows or columns of that length make a band. */
  private static int lines(PhotoHeader header, int length, int bandBytes) {
    long lineBytes = (long) length * header.bands() * (header.bits() / 8);
    return (int) Math.max(1, bandBytes / lineBytes);
  }
}
