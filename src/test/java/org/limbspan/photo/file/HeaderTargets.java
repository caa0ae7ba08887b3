package org.limbspan.photo.file;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PictureBytes;
import org.limbspan.testing.fuzz.ParserTarget;

/** Heads of picture files; the pixels have a bench of their own. */
public final class HeaderTargets {

  private HeaderTargets() {}

  /** Files are laid into {@code folder} one after the other. */
  public static List<ParserTarget> all(Path folder) {
    BufferedImage picture = new BufferedImage(24, 20, BufferedImage.TYPE_3BYTE_BGR);
    ExifBlock exif = ExifBlock.usual("2026:05:29 21:10:00").offset("+02:00").orientation(6);
    Path file = folder.resolve("head.bin");
    return List.of(
        new ParserTarget(
            "heads of pictures, Exif",
            4,
            List.of(
                PictureBytes.jpeg(JpegFile.bytes(picture, 90), exif),
                PictureBytes.jpeg(PictureBytes.progressiveJpeg(picture), exif),
                PictureBytes.png(PictureBytes.png(picture), exif),
                PictureBytes.tiff(picture, "none"),
                PictureBytes.tiff(picture, "LZW")),
            List.of(
                "Exif\u0000\u0000",
                "MM\u0000*",
                "II*\u0000",
                "IHDR",
                "eXIf",
                "2026:02:30 25:61:61"),
            input -> read(file, input),
            List.of(UnusableFile.class)));
  }

  private static void read(Path file, byte[] input) throws IOException, UnusableFile {
    Files.write(file, input);
    PhotoFile.header(file);
  }
}
