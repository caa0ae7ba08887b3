package org.limbspan.photo.file;

import java.util.Arrays;
import java.util.Optional;

/** Kinds of picture file that are decoded. */
public enum PhotoFormat {
  JPEG("jpg", "image/jpeg"),
  PNG("png", "image/png"),
  TIFF("tif", "image/tiff");

  private final String extension;
  private final String mediaType;

  PhotoFormat(String extension, String mediaType) {
    this.extension = extension;
    this.mediaType = mediaType;
  }

  /** Ending of a file's name, without the dot. */
  public String extension() {
    return extension;
  }

  /** The format whose files end so. */
  public static Optional<PhotoFormat> ofExtension(String extension) {
    return Arrays.stream(values()).filter(each -> each.extension.equals(extension)).findFirst();
  }

  public String mediaType() {
    return mediaType;
  }
}
