package org.limbspan.limb;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;

/** The rendered reference photographs and their truth, and images of the JDK in linear light. */
final class PhotoFiles {

  private static final String FOLDER = "/reference/photos/";

  private PhotoFiles() {}

  static LinearImage linear(BufferedImage image) {
    Raster raster = image.getRaster();
    int bands = raster.getNumBands();
    LinearImage.Builder builder =
        LinearImage.builder(image.getWidth(), image.getHeight(), 8, ToneCurve.SRGB);
    int[] row = new int[image.getWidth() * bands];
    for (int y = 0; y < image.getHeight(); y++) {
      builder.row(y, raster.getPixels(0, y, image.getWidth(), 1, row), bands);
    }
    return builder.build();
  }

  static BufferedImage decoded(String file) {
    try (InputStream in = open(file)) {
      return ImageIO.read(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rows of the truth table by column name. */
  static List<Map<String, String>> truth() {
    try (InputStream in = open("truth.csv")) {
      List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      String[] names = lines.get(0).split(",", -1);
      List<Map<String, String>> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",", -1);
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < names.length; i++) {
          row.put(names[i], cells[i]);
        }
        rows.add(row);
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static InputStream open(String file) {
    InputStream in = PhotoFiles.class.getResourceAsStream(FOLDER + file);
    if (in == null) {
      throw new IllegalStateException("no test resource " + FOLDER + file);
    }
    return in;
  }
}
