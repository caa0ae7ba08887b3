package org.limbspan.limb;

import java.util.Arrays;
import java.util.List;

/**
 * Looks whether ground is lit that should lie in shadow beside the limb: the Sun then stands
 * elsewhere than it was computed. Strips no wider than the edge say nothing.
 */
final class LitShadow {

  /** From so many widths of the edge on a strip in shadow is dark in its middle. */
  private static final double WIDE_STRIP = 2;

  /** In the middle of a strip the phase law leaves a tenth of the limb's light. */
  private static final double LIT = 0.4;

  private static final double MOST_LIT = 0.5;
  private static final int PLACES = 360;
  private static final int FEWEST = 6;

  /** Depth inside a sunlit limb, and height of the sky beside it, in widths of the edge. */
  private static final double BESIDE = 2;

  private final LinearImage image;
  private final Outline outline;
  private final double width;

  /**
   * @param width of the edge, full at half maximum, pixels
   */
  LitShadow(LinearImage image, Outline outline, double width) {
    this.image = image;
    this.outline = outline;
    this.width = width;
  }

  /**
   * Whether the outline that was settled with that terminator contradicts it.
   *
   * @param limb that is sunlit and agrees with the outline
   */
  boolean contradicts(Terminator terminator, List<SectorEdge> limb) {
    double ground = level(limb, BESIDE * width);
    double sky = level(limb, -BESIDE * width);
    int lit = 0;
    int seen = 0;
    for (int i = 0; i < PLACES; i++) {
      double angle = 2 * Math.PI * i / PLACES;
      double strip = terminator.hidden(angle);
      if (strip < WIDE_STRIP * width) {
        continue;
      }
      double light = light(angle, strip / 2);
      seen += Double.isNaN(light) ? 0 : 1;
      lit += light - sky > LIT * (ground - sky) ? 1 : 0;
    }
    return seen >= FEWEST && lit > MOST_LIT * seen;
  }

  private double level(List<SectorEdge> limb, double depth) {
    double[] levels =
        limb.stream()
            .mapToDouble(edge -> light(edge.angle(), depth))
            .filter(level -> !Double.isNaN(level))
            .sorted()
            .toArray();
    return levels.length == 0 ? 0 : levels[levels.length / 2];
  }

  /** Median of nine pixels at a depth inside the outline, or no number outside the picture. */
  private double light(double angle, double depth) {
    double[] p = outline.pointAt(angle, 1 - depth / outline.meanRadius());
    if (!image.holds(p[0] - 1, p[1] - 1) || !image.holds(p[0] + 1, p[1] + 1)) {
      return Double.NaN;
    }
    double[] nine = new double[9];
    for (int i = 0; i < nine.length; i++) {
      nine[i] = image.light((int) Math.round(p[0]) + i % 3 - 1, (int) Math.round(p[1]) + i / 3 - 1);
    }
    Arrays.sort(nine);
    return nine[nine.length / 2];
  }
}
