package org.limbspan.limb;

/**
 * The expected light across the limb at one place: the ground's brightness under the phase law, cut
 * off at the limb and spread by the edge shape, tabulated over depth. A second column is the same
 * ground growing brighter over the sphere, that is with the cosine of the angle of view: ground
 * that is even on the sphere changes steeply near the limb, where the sphere turns away. Further
 * columns are the light of the ground's patches, see {@link GroundTexture}.
 */
final class EdgeTemplate {

  private static final int NODES = 28;
  private static final int PER_SIGMA = 8;

  private final double perPixel;
  private final int half;
  private final double radius;
  private final float[] level;
  private final float[] turning;
  private final float[] growing;
  private final float[][] patch;

  /**
   * @param reach largest depth that will be asked for, pixels
   * @param patches of the ground
   */
  EdgeTemplate(
      EdgeShape shape,
      Illumination light,
      double sunOverLimb,
      double radius,
      double reach,
      int patches) {
    this.radius = radius;
    perPixel = PER_SIGMA / shape.sigma();
    half = (int) Math.ceil(reach * perPixel) + 2;
    level = new float[2 * half + 1];
    turning = new float[2 * half + 1];
    growing = new float[2 * half + 1];
    patch = new float[patches][2 * half + 1];
    double deepest = reach + 4 * shape.sigma();
    double before = light.brightness(sunOverLimb, 0);
    double place = 0;
    add(shape, 0, before, 0, 0);
    addPatches(shape, 0, 0, 0, 0, before);
    for (int j = 1; j <= NODES; j++) {
      double next = deepest * j * j / (NODES * NODES);
      double here = light.brightness(sunOverLimb, next / radius);
      add(
          shape,
          (place + next) / 2,
          here - before,
          cosine(next / radius) * here - cosine(place / radius) * before,
          next * here - place * before);
      addPatches(
          shape, (place + next) / 2, cosine(place / radius), before, cosine(next / radius), here);
      before = here;
      place = next;
    }
  }

  /** Of an even sheet. */
  static EdgeTemplate even(EdgeShape shape, double reach) {
    return new EdgeTemplate(shape, new Illumination(0, 0, 1), 0, 1e9, reach, 0);
  }

  /** Cosine of the angle of view at a depth in radii. */
  static double cosine(double depth) {
    return Math.sqrt(Math.min(1, 2 * depth));
  }

  private void add(EdgeShape shape, double at, double step, double turn, double growth) {
    if (step == 0 && turn == 0 && growth == 0) {
      return;
    }
    for (int i = 0; i < level.length; i++) {
      double e = shape.at((i - half) / perPixel - at);
      level[i] += (float) (step * e);
      turning[i] += (float) (turn * e);
      growing[i] += (float) (growth * e);
    }
  }

  /** The ground between two depths, shared out to the patches, as steps of light. */
  private void addPatches(
      EdgeShape shape, double at, double from, double before, double to, double here) {
    for (int p = 0; p < patch.length; p++) {
      double step =
          here * GroundTexture.share(p, patch.length, to)
              - before * GroundTexture.share(p, patch.length, from);
      if (step != 0) {
        for (int i = 0; i < level.length; i++) {
          patch[p][i] += (float) (step * shape.at((i - half) / perPixel - at));
        }
      }
    }
  }

  double patch(int p, double depth) {
    return read(patch[p], depth);
  }

  double level(double depth) {
    return read(level, depth);
  }

  /** Cosine of the angle of view at a depth in pixels. */
  double turnAt(double depth) {
    return cosine(depth / radius);
  }

  double turning(double depth) {
    return read(turning, depth);
  }

  double growing(double depth) {
    return read(growing, depth);
  }

  /** Change of the level a pixel of depth. */
  double slope(double depth) {
    double step = 0.5 / perPixel;
    return (read(level, depth + step) - read(level, depth - step)) / (2 * step);
  }

  /** The highest level of the table: what amplitude one means in light. */
  double peak() {
    float most = 0;
    for (float v : level) {
      most = Math.max(most, v);
    }
    return most;
  }

  private double read(float[] table, double depth) {
    double place = depth * perPixel + half;
    if (place <= 0) {
      return table[0];
    }
    if (place >= table.length - 1) {
      return table[table.length - 1];
    }
    int i = (int) place;
    double f = place - i;
    return table[i] + f * (table[i + 1] - table[i]);
  }
}
