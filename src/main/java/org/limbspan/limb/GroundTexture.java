package org.limbspan.limb;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * How uneven the ground beside the limb is expected to be: patches from the limb inwards, even in
 * the angle of view, whose brightness varies at random with an exponential correlation.
 *
 * <p>Seen aslant, bright and dark ground of a few degrees crowds into the width of the edge. A fit
 * that takes the ground there for smooth puts the limb of a dark strip inwards by a tenth of the
 * edge's width; one that expects texture keeps the place open by as much.
 */
final class GroundTexture {

  /** Of an even sheet. */
  static final GroundTexture NONE = new GroundTexture(0);

  /** Width of a patch in the cosine of the angle of view. */
  static final double SPACING = 0.035;

  /** Standard deviation of the relative brightness: seas and highlands, craters and rays. */
  private static final double SIZE = 0.18;

  /** Over which it changes, in the cosine of the angle of view, that is radians of the sphere. */
  private static final double LENGTH = 0.08;

  /** The window follows the edge while it is sought. */
  private static final double MARGIN = 1.1;

  private final double[][] precision;

  private GroundTexture(int patches) {
    if (patches == 0) {
      precision = new double[0][0];
      return;
    }
    RealMatrix covariance = MatrixUtils.createRealMatrix(patches, patches);
    for (int i = 0; i < patches; i++) {
      for (int j = 0; j < patches; j++) {
        double apart = Math.abs(i - j) * SPACING / LENGTH;
        covariance.setEntry(i, j, SIZE * SIZE * Math.exp(-apart));
      }
    }
    precision = MatrixUtils.inverse(covariance).getData();
  }

  /**
   * Of the Moon's ground.
   *
   * @param window depth to which it is fitted, pixels
   * @param radius of the disc, pixels
   */
  static GroundTexture within(double window, double radius) {
    double deepest = EdgeTemplate.cosine(MARGIN * window / radius);
    return new GroundTexture((int) Math.ceil(deepest / SPACING) + 1);
  }

  int patches() {
    return precision.length;
  }

  /** Inverse of the patches' relative covariance. */
  double precision(int patch, int other) {
    return precision[patch][other];
  }

  /**
   * What a patch has of the ground at a place, 0 to 1; neighbours share it.
   *
   * @param cosine of the angle of view
   */
  static double share(int patch, int patches, double cosine) {
    double place = cosine / SPACING;
    return patch == patches - 1 && place > patch ? 1 : Math.max(0, 1 - Math.abs(place - patch));
  }
}
