package org.limbspan.photo.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.limbspan.limb.ToneCurve;

/** Reads what a picture file tells about itself. */
public final class PhotoFile {

  private PhotoFile() {}

  /**
   * The header of a file, held against {@link PhotoLimits}; its pixels are not touched.
   *
   * @throws UnusableFile if it is no picture that can be measured
   * @throws IOException if the file cannot be read
   */
  public static PhotoHeader header(Path file) throws IOException, UnusableFile {
    long bytes = Files.size(file);
    if (bytes > PhotoLimits.MOST_BYTES) {
      throw new UnusableFile(
          FileProblem.FILE_TOO_LARGE,
          "The file has %d MB: expected at most %d MB."
              .formatted(bytes >> 20, PhotoLimits.MOST_BYTES >> 20));
    }
    PhotoFormat format;
    try (InputStream stream = Files.newInputStream(file)) {
      format = FileKind.of(stream);
    }
    return switch (format) {
      case JPEG -> jpeg(file);
      case PNG -> png(file);
      case TIFF -> tiff(file);
    };
  }

  private static PhotoHeader jpeg(Path file) throws IOException, UnusableFile {
    try (InputStream stream = Files.newInputStream(file)) {
      JpegHeader header = JpegHeader.read(new ByteFeed(stream));
      return new PhotoHeader(
          PhotoFormat.JPEG,
          header.width(),
          header.height(),
          8,
          header.components(),
          ToneCurve.SRGB,
          ShotTags.read(header.exif()));
    }
  }

  private static PhotoHeader png(Path file) throws IOException, UnusableFile {
    try (InputStream stream = Files.newInputStream(file)) {
      PngHeader header = PngHeader.read(new ByteFeed(stream));
      return new PhotoHeader(
          PhotoFormat.PNG,
          header.width(),
          header.height(),
          header.bits(),
          header.bands(),
          header.curve(),
          ShotTags.read(header.exif()));
    }
  }

  private static PhotoHeader tiff(Path file) throws IOException, UnusableFile {
    TiffHeader header = TiffHeader.read(file);
    return new PhotoHeader(
        PhotoFormat.TIFF,
        header.width(),
        header.height(),
        header.bits(),
        header.bands(),
        ToneCurve.SRGB,
        header.shot());
  }
}
