package org.limbspan.limb;

/**
 * The pixels near an outline, sorted into sectors of equal angle. No interpolation: the pixels'
 * noise stays independent. Memory: at most 700 000 pixels of 12 bytes, whatever the image's size.
 */
final class Annulus {

  private static final double SECTOR_PX = 5;
  private static final double STEP_PX = 0.5;
  private static final int MOST_PIXELS = 700_000;

  private final LinearImage image;
  private final Outline outline;
  private final double window;
  private final int sectors;
  private final int stride;
  private final EdgePixels pixels;
  private final SectorProfile[] profiles;
  private final int[] first;

  /**
   * Reads the pixels within a distance of the outline.
   *
   * @param window largest depth inside and distance outside, pixels
   */
  Annulus(LinearImage image, Outline outline, double window) {
    this.image = image;
    this.outline = outline;
    this.window = window;
    sectors = sectorCount(outline);
    double expected = 2 * Math.PI * outline.meanRadius() * (2 * window + 1);
    stride = (int) Math.max(1, Math.ceil(expected / MOST_PIXELS));
    pixels = new EdgePixels((int) (1.2 * expected / stride) + 1000);
    double tall =
        1.05 * outline.verticalRadius()
            + window
            + Math.abs(outline.rollRad()) * outline.horizontalRadius();
    int top = (int) Math.max(0, Math.floor(outline.centreY() - tall));
    int bottom = (int) Math.min(image.height() - 1.0, Math.ceil(outline.centreY() + tall));
    for (int y = top; y <= bottom; y++) {
      readRow(y);
    }
    first = pixels.sort(sectors);
    profiles = new SectorProfile[sectors];
    int steps = (int) Math.max(24, Math.min(80, Math.ceil(2 * window / STEP_PX)));
    for (int s = 0; s < sectors; s++) {
      profiles[s] = new SectorProfile(pixels, first[s], first[s + 1], window, steps);
    }
  }

  static int sectorCount(Outline outline) {
    double around = 2 * Math.PI * outline.meanRadius();
    return (int) Math.max(120, Math.min(720, around / SECTOR_PX));
  }

  /** Walks a row, leaping over the inside of the disc. */
  private void readRow(int y) {
    double wide = outline.horizontalRadius() + window + 2;
    int left = (int) Math.max(0, Math.floor(outline.centreX() - wide));
    int right = (int) Math.min(image.width() - 1.0, Math.ceil(outline.centreX() + wide));
    double cos = Math.cos(outline.rollRad());
    double sin = Math.sin(outline.rollRad());
    double dy = y - outline.centreY();
    int x = left;
    while (x <= right) {
      double dx = x - outline.centreX();
      Outline.Place place = outline.placeOf(dx * cos + dy * sin, dx * sin - dy * cos);
      double depth = Math.abs(place.depth());
      if (depth <= window) {
        if (stride == 1 || (x + y * 3) % stride == 0) {
          add(x, y, place);
        }
        x++;
      } else {
        x += Math.max(1, (int) (0.6 * (depth - window)));
      }
    }
  }

  private void add(int x, int y, Outline.Place place) {
    double turn = place.angle() / (2 * Math.PI);
    int sector = Math.floorMod((int) Math.floor(turn * sectors), sectors);
    pixels.add(
        sector, place.depth(), image.clipped(x, y) ? Float.POSITIVE_INFINITY : image.light(x, y));
  }

  Outline outline() {
    return outline;
  }

  double window() {
    return window;
  }

  int sectors() {
    return sectors;
  }

  /** Middle angle of a sector on the disc, radians counter-clockwise from the horizon's right. */
  double angle(int sector) {
    return (sector + 0.5) * 2 * Math.PI / sectors;
  }

  SectorProfile profile(int sector) {
    return profiles[sector];
  }

  EdgePixels pixels() {
    return pixels;
  }

  int from(int sector) {
    return first[sector];
  }

  int to(int sector) {
    return first[sector + 1];
  }

  /** Whether the outline leaves the picture in this sector. */
  boolean outside(int sector) {
    double[] p = outline.pointAt(angle(sector), 1 + 2.0 / outline.meanRadius());
    return !image.holds(p[0], p[1]);
  }
}
