package org.limbspan.limb;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
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

  /**
   * A row of the truth table.
   *
   * @param horizontalPx NaN where there is no disc
   * @param verticalPx the same
   */
  record Truth(
      String file, String kind, String refuseReason, double horizontalPx, double verticalPx) {

    @Override
    public String toString() {
      return file;
    }
  }

  static List<Truth> truth() {
    try (InputStream in = open("truth.csv")) {
      List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      List<String> names = List.of(lines.get(0).split(",", -1));
      List<Truth> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",", -1);
        rows.add(
            new Truth(
                cells[names.indexOf("file")],
                cells[names.indexOf("kind")],
                cells[names.indexOf("refuse_reason")],
                number(cells[names.indexOf("true_h_px")]),
                number(cells[names.indexOf("true_v_px")])));
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static double number(String cell) {
    return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
  }

  private static InputStream open(String file) {
    InputStream in = PhotoFiles.class.getResourceAsStream(FOLDER + file);
    if (in == null) {
      throw new IllegalStateException("no test resource " + FOLDER + file);
    }
    return in;
  }
}
