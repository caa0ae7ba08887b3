package org.limbspan.limb;

import java.util.Arrays;
import java.util.Optional;

/**
 * Finds the brightest big four-sided patch of a photograph: pixels above a threshold by Otsu's
 * method (1979), joined where they touch, kept if they fill the rectangle that has their moments.
 */
final class SheetFinder {

  private static final int LEVELS = 256;
  private static final double LEAST_SHARE = 0.0004;

  private final Thumbnail image;
  private final boolean[] bright;
  private final int[] queue;

  private SheetFinder(Thumbnail image) {
    this.image = image;
    bright = new boolean[image.width() * image.height()];
    queue = new int[bright.length];
    double threshold = threshold();
    for (int i = 0; i < bright.length; i++) {
      bright[i] = light(i) > threshold;
    }
  }

  /**
   * A rectangle in the photograph's pixels.
   *
   * @param alongX unit vector along the tall side
   * @param alongY the same, downwards
   */
  record Rectangle(
      double x, double y, double alongX, double alongY, double tall, double narrow, int factor) {}

  static Optional<Rectangle> find(LinearImage photograph) {
    return new SheetFinder(new Thumbnail(photograph)).best();
  }

  private double light(int i) {
    return Math.sqrt(image.at(i % image.width(), i / image.width()));
  }

  /**
   * The level that parts the histogram of the square root of light with most between-class
   * variance.
   */
  private double threshold() {
    int[] histogram = new int[LEVELS];
    double total = 0;
    for (int i = 0; i < bright.length; i++) {
      int level = (int) Math.max(0, Math.min(LEVELS - 1.0, light(i) * LEVELS));
      histogram[level]++;
      total += level;
    }
    double below = 0;
    double belowSum = 0;
    double best = -1;
    int at = 0;
    for (int level = 0; level < LEVELS - 1; level++) {
      below += histogram[level];
      belowSum += (double) level * histogram[level];
      double above = bright.length - below;
      if (below == 0 || above == 0) {
        continue;
      }
      double apart = belowSum / below - (total - belowSum) / above;
      double variance = below * above * apart * apart;
      if (variance > best) {
        best = variance;
        at = level;
      }
    }
    return (at + 1.0) / LEVELS;
  }

  private Optional<Rectangle> best() {
    Rectangle best = null;
    double bestArea = LEAST_SHARE * bright.length;
    for (int i = 0; i < bright.length; i++) {
      if (bright[i]) {
        int size = flood(i);
        if (size > bestArea) {
          Rectangle rectangle = rectangle(size);
          double filled = size / (rectangle.tall() * rectangle.narrow());
          if (filled > 0.9 && filled < 1.12) {
            best = scaled(rectangle);
            bestArea = size;
          }
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** Takes a patch out of the picture into the queue. */
  private int flood(int start) {
    int width = image.width();
    int size = 0;
    queue[size++] = start;
    bright[start] = false;
    for (int next = 0; next < size; next++) {
      int at = queue[next];
      int x = at % width;
      int[] neighbours = {x > 0 ? at - 1 : -1, x < width - 1 ? at + 1 : -1, at - width, at + width};
      for (int n : neighbours) {
        if (n >= 0 && n < bright.length && bright[n]) {
          bright[n] = false;
          queue[size++] = n;
        }
      }
    }
    return size;
  }

  /** The rectangle with a patch's second moments: side squared over twelve. */
  private Rectangle rectangle(int size) {
    double x = 0;
    double y = 0;
    for (int i : Arrays.copyOf(queue, size)) {
      x += column(i);
      y += row(i);
    }
    x /= size;
    y /= size;
    double xx = 0;
    double yy = 0;
    double xy = 0;
    for (int k = 0; k < size; k++) {
      double dx = column(queue[k]) - x;
      double dy = row(queue[k]) - y;
      xx += dx * dx / size;
      yy += dy * dy / size;
      xy += dx * dy / size;
    }
    double half = Math.hypot((xx - yy) / 2, xy);
    double angle = 0.5 * Math.atan2(2 * xy, xx - yy);
    return new Rectangle(
        x,
        y,
        Math.cos(angle),
        Math.sin(angle),
        Math.sqrt(12 * ((xx + yy) / 2 + half)),
        Math.sqrt(12 * Math.max(1e-3, (xx + yy) / 2 - half)),
        image.factor());
  }

  private int column(int at) {
    return at % image.width();
  }

  private int row(int at) {
    return at / image.width();
  }

  private Rectangle scaled(Rectangle r) {
    return new Rectangle(
        image.full(r.x()),
        image.full(r.y()),
        r.alongX(),
        r.alongY(),
        r.tall() * image.factor(),
        r.narrow() * image.factor(),
        image.factor());
  }
}
