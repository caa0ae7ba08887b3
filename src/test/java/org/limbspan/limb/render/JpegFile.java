package org.limbspan.limb.render;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;

/** A photograph as JPEG bytes and back, as a camera's file would lose it. */
public final class JpegFile {

  private JpegFile() {}

  /** The bytes of a JPEG file of that quality, 0 to 100. */
  public static byte[] bytes(BufferedImage image, int quality) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(out);
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(quality / 100f);
      writer.write(null, new IIOImage(image, null, null), param);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  public static BufferedImage through(BufferedImage image, int quality) {
    try {
      return ImageIO.read(new ByteArrayInputStream(bytes(image, quality)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
