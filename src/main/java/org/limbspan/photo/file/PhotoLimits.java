package org.limbspan.photo.file;

/**
 * What is read of a file before it is refused.
 *
 * <p>Memory for one photograph: a band of decoded samples of at most 48 MB, and 4.1 bytes a pixel
 * of the picture in linear light, 264 MB at the limit of 64 megapixels; one photograph at a time is
 * decoded (see {@code Darkroom}). Outside the heap a progressive JPEG takes another 6 bytes a
 * pixel.
 */
public final class PhotoLimits {

  /** Longest file: a 40-megapixel TIFF of 16 bits and three channels. */
  public static final long MOST_BYTES = 256L * 1024 * 1024;

  /** Most pixels of a picture. */
  public static final long MOST_PIXELS = 64_000_000;

  /** Longest side of a picture, and of a tile in it, in pixels. */
  static final int LONGEST_SIDE_PX = 32_000;

  /** Decoded samples held at once, bytes. */
  static final int BAND_BYTES = 48 * 1024 * 1024;

  /** Passes of a progressive JPEG; cameras and usual software write up to a dozen. */
  static final int MOST_SCANS = 64;

  /** Longest Exif block; a JPEG segment holds no more. */
  static final int LONGEST_EXIF_BYTES = 64 * 1024;

  private PhotoLimits() {}

  static void requirePixels(long width, long height) throws UnusableFile {
    if (width < 1 || height < 1) {
      throw UnusableFile.damaged(
          "its header tells a size of " + width + " x " + height + " pixels");
    }
    if (width > LONGEST_SIDE_PX || height > LONGEST_SIDE_PX || width * height > MOST_PIXELS) {
      throw new UnusableFile(
          FileProblem.TOO_MANY_PIXELS,
          "The picture has %d x %d pixels: expected at most %d megapixels and %d pixels a side. Crop it; scaling it down would change the plate scale."
              .formatted(width, height, MOST_PIXELS / 1_000_000, LONGEST_SIDE_PX));
    }
  }
}
