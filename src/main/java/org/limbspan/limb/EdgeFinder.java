package org.limbspan.limb;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Edges of a thumbnail: crests of the gradient, the strongest first. */
final class EdgeFinder {

  private static final int MOST = 9000;
  private static final double ABOVE_NOISE = 4.5;

  private final Thumbnail image;
  private final float[] gradX;
  private final float[] gradY;
  private final float[] strength;

  private EdgeFinder(Thumbnail image) {
    this.image = image;
    int size = image.width() * image.height();
    gradX = new float[size];
    gradY = new float[size];
    strength = new float[size];
    differentiate();
  }

  static List<EdgePixel> edges(Thumbnail image) {
    return new EdgeFinder(image).crests();
  }

  /** Sobel's operator, an eighth of the weighted differences. */
  private void differentiate() {
    int width = image.width();
    for (int y = 1; y < image.height() - 1; y++) {
      for (int x = 1; x < width - 1; x++) {
        float nw = image.at(x - 1, y - 1);
        float ne = image.at(x + 1, y - 1);
        float sw = image.at(x - 1, y + 1);
        float se = image.at(x + 1, y + 1);
        int at = y * width + x;
        gradX[at] = (ne + se - nw - sw + 2 * (image.at(x + 1, y) - image.at(x - 1, y))) / 8;
        gradY[at] = (sw + se - nw - ne + 2 * (image.at(x, y + 1) - image.at(x, y - 1))) / 8;
        strength[at] = (float) Math.sqrt(gradX[at] * gradX[at] + gradY[at] * gradY[at]);
      }
    }
  }

  private List<EdgePixel> crests() {
    float least = (float) Math.max(1e-5, ABOVE_NOISE * typicalStrength());
    List<EdgePixel> found = new ArrayList<>();
    for (int y = 2; y < image.height() - 2; y++) {
      for (int x = 2; x < image.width() - 2; x++) {
        if (strength[y * image.width() + x] > least) {
          crest(x, y, found);
        }
      }
    }
    found.sort(Comparator.comparingDouble(EdgePixel::strength).reversed());
    return found.size() > MOST ? new ArrayList<>(found.subList(0, MOST)) : found;
  }

  private void crest(int x, int y, List<EdgePixel> found) {
    int at = y * image.width() + x;
    double here = strength[at];
    double ux = gradX[at] / here;
    double uy = gradY[at] / here;
    double ahead = between(x + ux, y + uy);
    double behind = between(x - ux, y - uy);
    if (here < ahead || here <= behind) {
      return;
    }
    double bend = ahead + behind - 2 * here;
    double shift = bend < 0 ? Math.max(-0.6, Math.min(0.6, (behind - ahead) / (2 * bend))) : 0;
    found.add(new EdgePixel(x + shift * ux, y + shift * uy, ux, uy, here));
  }

  private double between(double x, double y) {
    int i = (int) x;
    int j = (int) y;
    double fx = x - i;
    double fy = y - j;
    int at = j * image.width() + i;
    double top = strength[at] * (1 - fx) + strength[at + 1] * fx;
    double low = strength[at + image.width()] * (1 - fx) + strength[at + image.width() + 1] * fx;
    return top * (1 - fy) + low * fy;
  }

  /** The lower quartile of the gradient over a sample of pixels: noise and haze, no edges. */
  private double typicalStrength() {
    int step = Math.max(1, strength.length / 20000);
    float[] sample = new float[strength.length / step];
    int count = 0;
    for (int i = 0; i < sample.length; i++) {
      if (strength[i * step] > 0) {
        sample[count++] = strength[i * step];
      }
    }
    if (count == 0) {
      return 0;
    }
    Arrays.sort(sample, 0, count);
    return sample[count / 4] * 1.5;
  }
}
