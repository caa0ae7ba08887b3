package org.limbspan.photo.file;

import com.drew.imaging.FileType;
import com.drew.imaging.FileTypeDetector;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.EnumSet;
import java.util.Set;

/** Tells by its first bytes what a file is. */
final class FileKind {

  private static final Set<FileType> RAW =
      EnumSet.of(
          FileType.Crw, FileType.Cr2, FileType.Orf, FileType.Raf, FileType.Rw2, FileType.Crx);

  private FileKind() {}

  /**
   * The format of a file.
   *
   * @throws UnusableFile if it is none that is decoded
   */
  static PhotoFormat of(InputStream file) throws IOException, UnusableFile {
    FileType type = FileTypeDetector.detectFileType(new BufferedInputStream(file, 256));
    return switch (type) {
      case Jpeg -> PhotoFormat.JPEG;
      case Png -> PhotoFormat.PNG;
      // raw files are told from other TIFF files by what their directories say, see TiffHeader
      case Tiff, Arw, Nef -> PhotoFormat.TIFF;
      case Unknown ->
          throw new UnusableFile(
              FileProblem.NOT_AN_IMAGE,
              "The file is not a picture: expected JPEG, PNG or TIFF as the camera wrote it.");
      case Heif ->
          throw new UnusableFile(
              FileProblem.RAW,
              "The file is a HEIF (HEIC) picture, which is not decoded here. Set the camera or"
                  + " phone to write JPEG, or convert it to PNG without scaling it.");
      default ->
          throw RAW.contains(type) ? raw("a camera's raw file, " + type.getName()) : other(type);
    };
  }

  static UnusableFile raw(String what) {
    return new UnusableFile(
        FileProblem.RAW,
        "The file is "
            + what
            + ". Raw files are not decoded here: develop it to a TIFF of 16 bits without"
            + " sharpening, lens correction or scaling, or let the camera write JPEG beside raw and"
            + " send that; always the same of the two.");
  }

  private static UnusableFile other(FileType type) {
    return new UnusableFile(
        FileProblem.OTHER_FORMAT,
        "The file is of the kind "
            + type.getName()
            + ": expected JPEG, PNG or TIFF as the camera wrote it.");
  }
}
