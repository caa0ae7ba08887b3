package org.limbspan.photo;

import java.util.List;
import org.limbspan.limb.Diameter;
import org.limbspan.limb.LimbArc;
import org.limbspan.limb.Measurement.Measured;
import org.limbspan.limb.Outline;
import org.limbspan.sky.Axis;

/**
 * What was measured on a photograph, as it is kept. Lengths in pixels of the upright picture, whose
 * pixel centres have whole coordinates from the top left; see {@link Measured}.
 *
 * @param horizontal along the picture's horizon
 * @param vertical across it
 * @param asymmetry of the outline's upper and lower half, see {@link Outline}
 */
public record DiscFigures(
    Along horizontal,
    Along vertical,
    double centreX,
    double centreY,
    double centreUncertaintyPx,
    double rollRad,
    double asymmetry,
    double limbArcDeg,
    List<LimbArc> usedArcs,
    List<LimbArc> setAsideArcs,
    double edgeFwhmPx,
    double ripplePx,
    double clippedDiscShare,
    double clippedLimbShare,
    double illuminatedFraction) {

  /** Keeps the weights of frames finite, however good a photograph says it is. */
  private static final double LEAST_OWN_PX = 1e-3;

  private static final double MODEL_OWN = 0.5;
  private static final double MODEL_SHARED = Math.sqrt(1 - MODEL_OWN * MODEL_OWN);

  public DiscFigures {
    usedArcs = List.copyOf(usedArcs);
    setAsideArcs = List.copyOf(setAsideArcs);
  }

  /**
   * A diameter.
   *
   * @param ownPx part of its standard uncertainty that is of this photograph alone: noise, seeing,
   *     and a quarter of the variance of the model, since photographs of a bracket differ in
   *     exposure
   * @param sharedPx part that photographs of the same minutes share: relief, geometry, the rest of
   *     the model
   */
  public record Along(double diameterPx, double ownPx, double sharedPx) {

    public double uncertaintyPx() {
      return Math.hypot(ownPx, sharedPx);
    }

    static Along of(Diameter diameter) {
      return new Along(
          diameter.valuePx(),
          Math.max(
              LEAST_OWN_PX,
              root(diameter.noisePx(), diameter.ripplePx(), MODEL_OWN * diameter.modelPx())),
          root(diameter.reliefPx(), diameter.geometryPx(), MODEL_SHARED * diameter.modelPx()));
    }

    private static double root(double a, double b, double c) {
      return Math.sqrt(a * a + b * b + c * c);
    }
  }

  static DiscFigures of(Measured measured) {
    Outline outline = measured.outline();
    return new DiscFigures(
        Along.of(measured.horizontal()),
        Along.of(measured.vertical()),
        outline.centreX(),
        outline.centreY(),
        measured.centreUncertaintyPx(),
        outline.rollRad(),
        outline.asymmetry(),
        measured.limbArcDeg(),
        measured.usedArcs(),
        measured.setAsideArcs(),
        measured.edgeFwhmPx(),
        measured.ripplePx(),
        measured.clippedDiscShare(),
        measured.clippedLimbShare(),
        measured.illuminatedFraction());
  }

  /**
   * The diameter along an axis. A limb fit is the mean of both: their own parts as independent,
   * their shared parts as fully correlated.
   */
  public Along along(Axis axis) {
    return along(axis, horizontal, vertical);
  }

  static Along along(Axis axis, Along horizontal, Along vertical) {
    return switch (axis) {
      case HORIZONTAL -> horizontal;
      case VERTICAL -> vertical;
      case LIMB_FIT ->
          new Along(
              (horizontal.diameterPx + vertical.diameterPx) / 2,
              Math.hypot(horizontal.ownPx, vertical.ownPx) / 2,
              (horizontal.sharedPx + vertical.sharedPx) / 2);
    };
  }

  /** Length of sunlit limb that was seen and not used, degrees. */
  public double setAsideDeg() {
    return setAsideArcs.stream().mapToDouble(LimbArc::lengthDeg).sum();
  }

  Outline outline() {
    return new Outline(
        centreX,
        centreY,
        horizontal.diameterPx() / 2,
        vertical.diameterPx() / 2,
        asymmetry,
        rollRad);
  }
}
