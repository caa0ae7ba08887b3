package org.limbspan.limb;

import java.util.List;

/** What became of a photograph. */
public sealed interface Measurement {

  /**
   * The disc was measured.
   *
   * @param outline the fitted outline
   * @param horizontal diameter along the horizon
   * @param vertical diameter across it
   * @param centreUncertaintyPx standard uncertainty of the centre, the larger of both axes
   * @param flatteningUncertainty of 1 - vertical / horizontal
   * @param limbArcDeg length of the limb that was used
   * @param usedArcs where it lies
   * @param setAsideArcs sunlit limb that was seen and not used: hidden, disturbed or doubtful
   * @param edgeFwhmPx width of the edge, full width at half maximum
   * @param ripplePx root mean square of the limb's displacement by seeing
   * @param clippedDiscShare share of the disc's pixels that are clipped
   * @param clippedLimbShare share of the used limb that is clipped right beside the edge
   * @param illuminatedFraction of the disc, estimated from the photograph, 0 to 1
   */
  record Measured(
      Outline outline,
      Diameter horizontal,
      Diameter vertical,
      double centreUncertaintyPx,
      double flatteningUncertainty,
      double limbArcDeg,
      List<LimbArc> usedArcs,
      List<LimbArc> setAsideArcs,
      double edgeFwhmPx,
      double ripplePx,
      double clippedDiscShare,
      double clippedLimbShare,
      double illuminatedFraction)
      implements Measurement {

    public Measured {
      usedArcs = List.copyOf(usedArcs);
      setAsideArcs = List.copyOf(setAsideArcs);
    }
  }

  /**
   * The photograph gives no diameter.
   *
   * @param reason why
   * @param found the figure that decided, in the unit that {@code expected} names
   * @param expected what was needed, in words with its unit
   */
  record Refused(Refusal reason, double found, String expected) implements Measurement {}
}
