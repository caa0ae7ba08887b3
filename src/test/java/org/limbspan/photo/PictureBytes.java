package org.limbspan.photo;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;

/** Pictures as the bytes of files, with the Exif block of a camera. */
public final class PictureBytes {

  private static final int END_OF_PNG_HEADER = 8 + 25;

  private PictureBytes() {}

  /** A JPEG file with that block behind its first marker. */
  public static byte[] jpeg(byte[] plain, ExifBlock exif) {
    byte[] block = exif.bytes();
    ByteBuffer segment = ByteBuffer.allocate(4 + 6 + block.length);
    segment.putShort((short) 0xffe1).putShort((short) (2 + 6 + block.length));
    segment.put(new byte[] {'E', 'x', 'i', 'f', 0, 0}).put(block);
    return inserted(plain, 2, segment.array());
  }

  public static byte[] png(byte[] plain, ExifBlock exif) {
    return inserted(plain, END_OF_PNG_HEADER, chunk("eXIf", exif.bytes()));
  }

  /** A chunk of a PNG file with its length and checksum. */
  public static byte[] chunk(String type, byte[] data) {
    ByteBuffer chunk = ByteBuffer.allocate(12 + data.length);
    chunk.putInt(data.length).put(type.getBytes(StandardCharsets.US_ASCII));
    chunk.put(data);
    CRC32 sum = new CRC32();
    sum.update(chunk.array(), 4, 4 + data.length);
    return chunk.putInt((int) sum.getValue()).array();
  }

  /** A JPEG file in several passes over the picture. */
  public static byte[] progressiveJpeg(BufferedImage image) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(out);
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
      writer.write(null, new IIOImage(image, null, null), param);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  public static byte[] png(BufferedImage image) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /**
   * A TIFF file, {@code compression} being none, LZW, ZLib or PackBits; written by the Java
   * platform's own writer, which has nothing in common with the reader.
   */
  public static byte[] tiff(BufferedImage image, String compression) {
    ImageWriter writer = platformWriter();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(out);
      ImageWriteParam param = writer.getDefaultWriteParam();
      if (!compression.equals("none")) {
        param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionType(compression);
      }
      writer.write(null, new IIOImage(image, null, null), param);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  private static ImageWriter platformWriter() {
    Iterator<ImageWriter> writers = ImageIO.getImageWritersByFormatName("tiff");
    while (writers.hasNext()) {
      ImageWriter writer = writers.next();
      if (writer.getOriginatingProvider().getVendorName().startsWith("Oracle")) {
        return writer;
      }
    }
    throw new AssertionError("no such writer");
  }

  private static byte[] inserted(byte[] plain, int at, byte[] more) {
    ByteBuffer all = ByteBuffer.allocate(plain.length + more.length);
    all.put(plain, 0, at).put(more).put(plain, at, plain.length - at);
    return all.array();
  }
}
