package org.limbspan.photo.file;

/**
 * What is read of a file before it is refused.
 *
 * <p>Memory for one photograph, of which one at a time is decoded: the picture in linear light, 4.2
 * bytes a pixel, and a band of decoded samples of at most 48 MB. The most pixels follow from the
 * heap, so that a photograph takes at most 55 percent of it: 56 megapixels with a heap of 512 MB,
 * 28 with 256 MB, never more than 100. Outside the heap a progressive JPEG takes another 6 bytes a
 * pixel.
 */
public final class PhotoLimits {

  /** Longest file: a 40-megapixel TIFF of 16 bits and three channels. */
  public static final long MOST_BYTES = 256L * 1024 * 1024;

  /** Decoded samples held at once, bytes. */
  static final int BAND_BYTES =
      (int) Math.min(48L * 1024 * 1024, Runtime.getRuntime().maxMemory() / 10);

  /** Most pixels of a picture. */
  public static final long MOST_PIXELS = mostPixels(Runtime.getRuntime().maxMemory());

  /** Longest side of a picture, and of a tile in it, in pixels. */
  static final int LONGEST_SIDE_PX = 32_000;

  /** Passes of a progressive JPEG; cameras and usual software write up to a dozen. */
  static final int MOST_SCANS = 64;

  /** Longest Exif block; a JPEG segment holds no more. */
  static final int LONGEST_EXIF_BYTES = 64 * 1024;

  private static final double HEAP_SHARE = 0.55;
  private static final double BYTES_PER_PIXEL = 4.2;
  private static final long MOST_PIXELS_EVER = 100_000_000;

  private PhotoLimits() {}

  static long mostPixels(long heapBytes) {
    double band = Math.min(48L * 1024 * 1024, heapBytes / 10);
    double pixels = (HEAP_SHARE * heapBytes - band) / BYTES_PER_PIXEL;
    return (long) Math.min(MOST_PIXELS_EVER, pixels);
  }

  static void requirePixels(long width, long height) throws UnusableFile {
    if (width < 1 || height < 1) {
      throw UnusableFile.damaged(
          "its header tells a size of " + width + " x " + height + " pixels");
    }
    if (width > LONGEST_SIDE_PX || height > LONGEST_SIDE_PX || width * height > MOST_PIXELS) {
      throw new UnusableFile(
          FileProblem.TOO_MANY_PIXELS,
          "The picture has %d x %d pixels: expected at most %d megapixels in the memory of this service,"
                  .formatted(width, height, MOST_PIXELS / 1_000_000)
              + " and %d pixels a side. Crop it; scaling it down would change the plate scale."
                  .formatted(LONGEST_SIDE_PX));
    }
  }
}
