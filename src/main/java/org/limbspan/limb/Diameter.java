package org.limbspan.limb;

/**
 * A diameter along one axis with the parts of its standard uncertainty, all in pixels.
 *
 * @param valuePx the diameter
 * @param noisePx from the pixels' noise
 * @param ripplePx from seeing that moves the limb to and fro
 * @param reliefPx from mountains and valleys along the limb
 * @param modelPx from the edge's assumed shape: ground beside the limb, tone curve, over-exposure
 * @param geometryPx from what the visible part of the limb leaves open, given the prior knowledge
 *     of flattening, asymmetry and roll
 */
public record Diameter(
    double valuePx,
    double noisePx,
    double ripplePx,
    double reliefPx,
    double modelPx,
    double geometryPx) {

  public Diameter {
    if (!(valuePx > 0) || !Double.isFinite(valuePx)) {
      throw new IllegalArgumentException("diameter " + valuePx + " px: expected above 0");
    }
  }

  /** Combined standard uncertainty, pixels. */
  public double uncertaintyPx() {
    return Math.sqrt(
        noisePx * noisePx
            + ripplePx * ripplePx
            + reliefPx * reliefPx
            + modelPx * modelPx
            + geometryPx * geometryPx);
  }

  public double relativeUncertainty() {
    return uncertaintyPx() / valuePx;
  }
}
