package org.limbspan.limb;

import java.util.Arrays;

/**
 * The pixels near an outline, sorted into sectors of equal angle: for each its depth inside the
 * outline and its light. No interpolation: the pixels' noise stays independent.
 */
final class Annulus {

  private static final double SECTOR_PX = 5;
  private static final double STEP_PX = 0.5;
  private static final int MOST_PIXELS = 700_000;

  private final Outline outline;
  private final double window;
  private final int[] first;
  private final float[] depth;
  private final float[] light;
  private final boolean[] outside;
  private final SectorProfile[] profiles;

  /**
   * Reads the pixels within a distance of the outline.
   *
   * @param window largest depth inside and distance outside, pixels
   */
  Annulus(LinearImage image, Outline outline, double window) {
    this.outline = outline;
    this.window = window;
    int sectors = sectorCount(outline);
    Reader reader = new Reader(image, outline, window, sectors);
    first = new int[sectors + 1];
    for (int i = 0; i < reader.count; i++) {
      first[reader.sector[i] + 1]++;
    }
    for (int s = 0; s < sectors; s++) {
      first[s + 1] += first[s];
    }
    depth = new float[reader.count];
    light = new float[reader.count];
    int[] next = Arrays.copyOf(first, sectors);
    for (int i = 0; i < reader.count; i++) {
      int at = next[reader.sector[i]]++;
      depth[at] = reader.depth[i];
      light[at] = reader.light[i];
    }
    outside = new boolean[sectors];
    for (int s = 0; s < sectors; s++) {
      double[] p = outline.pointAt(angle(s), 1 + 2.0 / outline.meanRadius());
      outside[s] = !image.holds(p[0], p[1]);
    }
    profiles = new SectorProfile[sectors];
    int steps = (int) Math.max(24, Math.min(80, Math.ceil(2 * window / STEP_PX)));
    for (int s = 0; s < sectors; s++) {
      profiles[s] = new SectorProfile(this, s, steps);
    }
  }

  static int sectorCount(Outline outline) {
    double around = 2 * Math.PI * outline.meanRadius();
    return (int) Math.max(120, Math.min(720, around / SECTOR_PX));
  }

  Outline outline() {
    return outline;
  }

  double window() {
    return window;
  }

  int sectors() {
    return first.length - 1;
  }

  /** Middle angle of a sector on the disc, radians counter-clockwise from the horizon's right. */
  double angle(int sector) {
    return (sector + 0.5) * 2 * Math.PI / sectors();
  }

  SectorProfile profile(int sector) {
    return profiles[sector];
  }

  int from(int sector) {
    return first[sector];
  }

  int to(int sector) {
    return first[sector + 1];
  }

  /** Depth inside the outline, pixels; negative outside. */
  float depth(int i) {
    return depth[i];
  }

  /** Light, or positive infinity where clipped. */
  float light(int i) {
    return light[i];
  }

  /** Whether the outline leaves the picture in this sector. */
  boolean outside(int sector) {
    return outside[sector];
  }

  /** Collects the pixels row by row. */
  private static final class Reader {

    private final LinearImage image;
    private final Outline outline;
    private final double window;
    private final int sectors;
    private final int stride;
    private int[] sector;
    private float[] depth;
    private float[] light;
    private int count;

    Reader(LinearImage image, Outline outline, double window, int sectors) {
      this.image = image;
      this.outline = outline;
      this.window = window;
      this.sectors = sectors;
      double expected = 2 * Math.PI * outline.meanRadius() * (2 * window + 1);
      stride = (int) Math.max(1, Math.ceil(expected / MOST_PIXELS));
      int guess = (int) (1.3 * expected / stride) + 1000;
      sector = new int[guess];
      depth = new float[guess];
      light = new float[guess];
      double tall =
          outline.verticalRadius() * 1.05
              + window
              + Math.abs(outline.rollRad()) * outline.horizontalRadius();
      int top = (int) Math.max(0, Math.floor(outline.centreY() - tall));
      int bottom = (int) Math.min(image.height() - 1, Math.ceil(outline.centreY() + tall));
      for (int y = top; y <= bottom; y++) {
        row(y);
      }
    }

    /** Walks a row, leaping over the inside of the disc. */
    private void row(int y) {
      double wide = outline.horizontalRadius() + window + 2;
      int left = (int) Math.max(0, Math.floor(outline.centreX() - wide));
      int right = (int) Math.min(image.width() - 1, Math.ceil(outline.centreX() + wide));
      double cos = Math.cos(outline.rollRad());
      double sin = Math.sin(outline.rollRad());
      double dy = y - outline.centreY();
      int x = left;
      while (x <= right) {
        double dx = x - outline.centreX();
        Outline.Place place = outline.placeOf(dx * cos + dy * sin, dx * sin - dy * cos);
        double d = place.depth();
        if (Math.abs(d) <= window) {
          if (stride == 1 || (x + y * 3) % stride == 0) {
            add(x, y, place);
          }
          x++;
        } else {
          x += Math.max(1, (int) (0.6 * (Math.abs(d) - window)));
        }
      }
    }

    private void add(int x, int y, Outline.Place place) {
      if (count == depth.length) {
        int more = count + count / 2;
        sector = Arrays.copyOf(sector, more);
        depth = Arrays.copyOf(depth, more);
        light = Arrays.copyOf(light, more);
      }
      double turn = place.angle() / (2 * Math.PI);
      sector[count] = Math.floorMod((int) Math.floor(turn * sectors), sectors);
      depth[count] = (float) place.depth();
      light[count] = image.clipped(x, y) ? Float.POSITIVE_INFINITY : image.light(x, y);
      count++;
    }
  }
}
