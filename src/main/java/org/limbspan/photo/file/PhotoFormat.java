package org.limbspan.photo.file;

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

  public String mediaType() {
    return mediaType;
  }
}
