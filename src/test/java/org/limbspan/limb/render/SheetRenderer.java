package org.limbspan.limb.render;

import java.awt.image.BufferedImage;
import java.util.Random;

/**
 * Draws an invented calibration photograph: a bright sheet on darker ground, seen in perspective.
 */
public final class SheetRenderer {

  public int width = 1400;
  public int height = 1120;
  public double centreX = 702.3;
  public double centreY = 551.8;
  public double tallPx = 560;
  public double shortPx = 396;

  /** Turn of the sheet in the picture, degrees. */
  public double turnDeg = 1.3;

  /** Lean back or forth, degrees: the tall side looks shorter by its cosine. */
  public double leanDeg;

  public double fwhmPx = 3;
  public double signalToNoise = 60;
  public double ground = 0.15;
  public double paper = 0.75;
  public long seed = 1;

  public BufferedImage render() {
    float[] plane = new float[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        plane[y * width + x] = (float) light(x, y);
      }
    }
    float[] soft = Blur.gaussian(plane, width, height, fwhmPx / 2.3548);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(seed);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        double value = soft[y * width + x] + paper / signalToNoise * random.nextGaussian();
        int code = Math.round(255 * MoonRenderer.encode(value));
        image.setRGB(x, y, code << 16 | code << 8 | code);
      }
    }
    return image;
  }

  private double light(int x, int y) {
    double shade = 1 + 0.06 * Math.sin(x / 61.0) * Math.cos(y / 47.0);
    int fine = 5;
    int inside = 0;
    for (int j = 0; j < fine; j++) {
      for (int i = 0; i < fine; i++) {
        inside += covers(x + (i + 0.5) / fine - 0.5, y + (j + 0.5) / fine - 0.5) ? 1 : 0;
      }
    }
    double share = inside / (double) (fine * fine);
    return share * paper * (1 - 0.05 * (shade - 1)) + (1 - share) * ground * shade;
  }

  private boolean covers(double x, double y) {
    double turn = Math.toRadians(turnDeg);
    double dx = x - centreX;
    double dy = y - centreY;
    double across = dx * Math.cos(turn) + dy * Math.sin(turn);
    double up = dx * Math.sin(turn) - dy * Math.cos(turn);
    double tall = tallPx * Math.cos(Math.toRadians(leanDeg));
    return Math.abs(across) < shortPx / 2 && Math.abs(up) < tall / 2;
  }
}
