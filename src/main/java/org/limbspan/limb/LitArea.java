package org.limbspan.limb;

import java.util.Arrays;
import java.util.BitSet;

/**
 * How much of the disc is lit, and from where: the lit share of the disc's area is the illuminated
 * fraction, and its centre of gravity stands towards the Sun.
 */
final class LitArea {

  private static final int ACROSS = 90;
  private static final double THRESHOLD = 0.16;

  /** Light of ground that is called dim, over the limb's. */
  private static final double DIMMEST = 0.3;

  private static final double BRIGHTEST_DIM = 0.45;

  private final double[] us;
  private final double[] vs;
  private final boolean[] isLit;
  private final BitSet white = new BitSet();
  private final double illuminatedFraction;
  private final double directionRad;
  private final double offset;
  private final double clippedShare;
  private final double brightness;

  LitArea(LinearImage image, Outline outline) {
    double[] levels = new double[ACROSS * ACROSS];
    us = new double[ACROSS * ACROSS];
    vs = new double[ACROSS * ACROSS];
    int count = 0;
    for (int j = 0; j < ACROSS; j++) {
      for (int i = 0; i < ACROSS; i++) {
        double u = (2 * i + 1.0) / ACROSS - 1;
        double v = (2 * j + 1.0) / ACROSS - 1;
        double rho = Math.hypot(u, v);
        if (rho > 0.99) {
          continue;
        }
        double[] p = outline.pointAt(Math.atan2(v, u), rho);
        if (!image.holds(p[0] - 1, p[1] - 1) || !image.holds(p[0] + 1, p[1] + 1)) {
          continue;
        }
        us[count] = u;
        vs[count] = v;
        white.set(count, image.clipped((int) p[0], (int) p[1]));
        levels[count++] = mean(image, p[0], p[1]);
      }
    }
    double sky = sky(image, outline);
    double[] sorted = Arrays.copyOf(levels, count);
    Arrays.sort(sorted);
    double bright = count == 0 ? 0 : sorted[(int) (0.993 * (count - 1))];
    brightness = bright - sky;
    double least = sky + THRESHOLD * (bright - sky);
    isLit = new boolean[count];
    int lit = 0;
    double u = 0;
    double v = 0;
    for (int i = 0; i < count; i++) {
      if (levels[i] > least) {
        isLit[i] = true;
        lit++;
        u += us[i];
        v += vs[i];
      }
    }
    illuminatedFraction = count == 0 ? 0 : lit / (double) count;
    directionRad = Math.atan2(v, u);
    offset = lit == 0 ? 0 : Math.hypot(u, v) / lit;
    clippedShare = count == 0 ? 0 : white.cardinality() / (double) count;
  }

  double illuminatedFraction() {
    return illuminatedFraction;
  }

  /** Direction of the middle of the sunlit limb on the disc, radians. */
  double directionRad() {
    return directionRad;
  }

  /** Distance of the lit area's centre of gravity from the disc's, radii. */
  double offset() {
    return offset;
  }

  /** Light of the brightest ground over the sky. */
  double brightness() {
    return brightness;
  }

  /** Share of the disc's pixels that are clipped. */
  double clippedShare() {
    return clippedShare;
  }

  /**
   * What is clipped of the sunlit ground, and of that part of it whose light is a third of the
   * limb's or some more: where that is white, the limb is more than twice as bright, and nothing
   * tells how much more.
   */
  Burnt burnt() {
    Illumination light = Illumination.of(illuminatedFraction, directionRad);
    int sunlit = 0;
    int sunlitWhite = 0;
    int dim = 0;
    int dimWhite = 0;
    for (int i = 0; i < isLit.length; i++) {
      if (isLit[i]) {
        int clipped = white.get(i) ? 1 : 0;
        double sun = light.sunOverLimb(Math.atan2(vs[i], us[i]));
        double over = light.brightness(sun, 1 - Math.hypot(us[i], vs[i]));
        boolean isDim = over > DIMMEST && over < BRIGHTEST_DIM;
        sunlit++;
        sunlitWhite += clipped;
        dim += isDim ? 1 : 0;
        dimWhite += isDim ? clipped : 0;
      }
    }
    return new Burnt(
        sunlitWhite / (double) Math.max(1, sunlit),
        dimWhite / (double) Math.max(1, dim),
        dim / (double) Math.max(1, sunlit));
  }

  /**
   * Clipped shares of the sunlit ground.
   *
   * @param ofAll of all of it
   * @param ofDim of the dim part
   * @param dim how much of the sunlit ground is dim
   */
  record Burnt(double ofAll, double ofDim, double dim) {}

  /** Share of the disc that is lit where it should be in shadow. */
  double litInShadow(Illumination light) {
    int found = 0;
    for (int i = 0; i < isLit.length; i++) {
      found += isLit[i] && light.toSun(us[i], vs[i]) < -0.1 ? 1 : 0;
    }
    return found / (double) Math.max(1, isLit.length);
  }

  /** Where the disc is dark though it should be sunlit. */
  Missing missing(Illumination light) {
    int found = 0;
    double u = 0;
    double v = 0;
    for (int i = 0; i < isLit.length; i++) {
      if (!isLit[i] && light.toSun(us[i], vs[i]) > 0.2) {
        found++;
        u += us[i];
        v += vs[i];
      }
    }
    return new Missing(found / (double) Math.max(1, isLit.length), Math.atan2(v, u));
  }

  /**
   * A dark part of the disc.
   *
   * @param share of the disc's area
   * @param directionRad of its middle, counter-clockwise from the horizon's right
   */
  record Missing(double share, double directionRad) {}

  private static double mean(LinearImage image, double x, double y) {
    double sum = 0;
    for (int j = -1; j <= 1; j++) {
      for (int i = -1; i <= 1; i++) {
        sum += image.light((int) x + i, (int) y + j);
      }
    }
    return sum / 9;
  }

  /** Median of the light just outside the disc. */
  private static double sky(LinearImage image, Outline outline) {
    double[] samples = new double[720];
    int count = 0;
    for (int i = 0; i < 360; i++) {
      for (double factor : new double[] {1.07, 1.12}) {
        double[] p = outline.pointAt(Math.toRadians(i), factor);
        if (image.holds(p[0] - 1, p[1] - 1) && image.holds(p[0] + 1, p[1] + 1)) {
          samples[count++] = mean(image, p[0], p[1]);
        }
      }
    }
    Arrays.sort(samples, 0, count);
    return count == 0 ? 0 : samples[count / 2];
  }
}
