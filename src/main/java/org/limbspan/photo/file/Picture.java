package org.limbspan.photo.file;

import com.twelvemonkeys.imageio.plugins.jpeg.JPEGImageReaderSpi;
import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.spi.IIORegistry;
import javax.imageio.stream.ImageInputStream;

/**
 * The picture of a file, decoded in parts. Each part is decoded from the file's beginning: decoders
 * let go of what lies behind them. A complaint of a decoder is a refusal.
 */
final class Picture {

  static {
    // where another class loader asked for image plug-ins first, they were not found
    IIORegistry registry = IIORegistry.getDefaultInstance();
    if (registry.getServiceProviderByClass(JPEGImageReaderSpi.class) == null) {
      registry.registerServiceProvider(new JPEGImageReaderSpi());
    }
    if (registry.getServiceProviderByClass(TIFFImageReaderSpi.class) == null) {
      registry.registerServiceProvider(new TIFFImageReaderSpi());
    }
  }

  private final Path file;
  private final PhotoHeader header;

  Picture(Path file, PhotoHeader header) {
    this.file = file;
    this.header = header;
  }

  /** A part in the size and depth that the header tells. */
  Raster part(Rectangle part) throws IOException, UnusableFile {
    BufferedImage image = read(param -> param.setSourceRegion(part));
    Raster raster = image.getRaster();
    boolean asTold =
        raster.getWidth() == part.width
            && raster.getHeight() == part.height
            && raster.getNumBands() <= 4
            && image.getColorModel().getComponentSize(0) == header.bits();
    if (!asTold) {
      throw UnusableFile.damaged("its pixels are other than its header tells");
    }
    return raster;
  }

  /** Every so many pixels across and down. */
  BufferedImage every(int pixels) throws IOException, UnusableFile {
    return read(param -> param.setSourceSubsampling(pixels, pixels, 0, 0));
  }

  private interface Wish {
    void in(ImageReadParam param);
  }

  private BufferedImage read(Wish wish) throws IOException, UnusableFile {
    ImageReader reader = reader();
    List<String> complaints = new ArrayList<>();
    try (ImageInputStream stream = ImageIO.createImageInputStream(file.toFile())) {
      reader.addIIOReadWarningListener((source, warning) -> note(warning, complaints));
      reader.setInput(stream, false, true);
      ImageReadParam param = reader.getDefaultReadParam();
      wish.in(param);
      BufferedImage image = decoded(reader, param);
      if (!complaints.isEmpty()) {
        throw UnusableFile.damaged("its decoder says '" + complaints.get(0) + "'");
      }
      return image;
    } finally {
      reader.dispose();
    }
  }

  private static BufferedImage decoded(ImageReader reader, ImageReadParam param)
      throws UnusableFile {
    try {
      return reader.read(0, param);
    } catch (IOException | RuntimeException undecodable) {
      // decoders meet damaged files with exceptions of every kind
      throw UnusableFile.damaged("it cannot be decoded (" + words(undecodable) + ")");
    }
  }

  private ImageReader reader() throws IOException {
    IIORegistry registry = IIORegistry.getDefaultInstance();
    return switch (header.format()) {
      case JPEG ->
          registry.getServiceProviderByClass(JPEGImageReaderSpi.class).createReaderInstance();
      case TIFF ->
          registry.getServiceProviderByClass(TIFFImageReaderSpi.class).createReaderInstance();
      case PNG -> ImageIO.getImageReadersByFormatName("png").next();
    };
  }

  private static void note(String warning, List<String> complaints) {
    String lower = warning.toLowerCase(Locale.ROOT);
    if (lower.contains("corrupt jpeg data")
        || lower.contains("premature end")
        || lower.contains("end of stream")) {
      complaints.add(warning);
    }
  }

  private static String words(Exception thrown) {
    String message = thrown.getMessage();
    return message == null || message.length() > 200 ? thrown.getClass().getSimpleName() : message;
  }
}
