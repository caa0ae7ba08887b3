package org.limbspan.photo.file;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** A picture scaled down to look at. */
public final class Preview {

  private static final float QUALITY = 0.88f;

  private Preview() {}

  /**
   * The upright picture as a JPEG file of 8 bits, not enlarged.
   *
   * @throws UnusableFile if the picture cannot be decoded
   */
  public static byte[] jpeg(Path file, PhotoHeader header, int longestSidePx)
      throws IOException, UnusableFile {
    int longest = Math.max(header.storedWidth(), header.storedHeight());
    int every = Math.max(1, longest / (2 * longestSidePx));
    return encoded(upright(new Picture(file, header).every(every), header, longestSidePx));
  }

  private static BufferedImage upright(BufferedImage stored, PhotoHeader header, int longestSide) {
    double scale =
        Math.min(1, longestSide / (double) Math.max(stored.getWidth(), stored.getHeight()));
    int width = Math.max(1, (int) Math.round(scale * stored.getWidth()));
    int height = Math.max(1, (int) Math.round(scale * stored.getHeight()));
    Orientation orientation = header.shot().orientation();
    boolean turned = orientation.isTransposed();
    BufferedImage upright =
        new BufferedImage(
            turned ? height : width, turned ? width : height, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D pen = upright.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    pen.transform(turning(orientation, width, height));
    pen.drawImage(stored, 0, 0, width, height, null);
    pen.dispose();
    return upright;
  }

  /** Sets a stored picture of that size upright. */
  private static AffineTransform turning(Orientation orientation, int width, int height) {
    if (orientation.isTransposed()) {
      double x = orientation.isRowReversed() ? -1 : 1;
      double y = orientation.isOrderReversed() ? -1 : 1;
      return new AffineTransform(0, y, x, 0, x < 0 ? height : 0, y < 0 ? width : 0);
    }
    double x = orientation.isRowReversed() ? -1 : 1;
    double y = orientation.isOrderReversed() ? -1 : 1;
    return new AffineTransform(x, 0, 0, y, x < 0 ? width : 0, y < 0 ? height : 0);
  }

  private static byte[] encoded(BufferedImage image) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(out);
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
