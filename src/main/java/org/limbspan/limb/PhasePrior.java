package org.limbspan.limb;

import java.util.Optional;
import org.limbspan.limb.MeasureOptions.ExpectedPhase;

/**
 * What is known of the Sun's direction before the photograph is measured. A prior and no command:
 * the lit part of the disc contradicts it here, the softness of the limb in {@link PhaseSearch}.
 */
final class PhasePrior {

  /** Earthshine, a bright cloud or a misplaced outline may light so much of the shadow. */
  private static final double MOST_LIT_IN_SHADOW = 0.03;

  /** So much of the sunlit disc may look dark: dim ground, branches, a thick cloud. */
  private static final double MOST_MISSING = 0.12;

  /** The same below, where a roof or the horizon may stand before the disc. */
  private static final double MOST_MISSING_BELOW = 0.35;

  private static final double BELOW_SPREAD_RAD = Math.toRadians(35);

  /** A camera's roll and some minutes of its clock turn the Sun by less. */
  private static final double TURNED_RAD = Math.toRadians(12);

  /** A partial Moon lights so much of the computed shadow when the Sun is turned by 20 degrees. */
  private static final double LIT_BY_TURN = 0.005;

  private final Optional<ExpectedPhase> expected;

  private PhasePrior(Optional<ExpectedPhase> expected) {
    this.expected = expected;
  }

  /**
   * The expectation, unless too much of the sunlit disc is missing; of a Sun that is not {@link
   * #isElsewhere}.
   */
  static PhasePrior agreeing(Optional<ExpectedPhase> expected, LitArea lit) {
    return new PhasePrior(expected.filter(e -> agrees(e, lit)));
  }

  /**
   * Whether the disc is lit from elsewhere: much of it in the computed shadow, or some of it and
   * from another direction, or far too little of it in the computed light. The clock, the place or
   * the camera's up is then not the one that was computed with (or something hides a third of the
   * disc), and nothing else that was computed from them is to be believed. A Moon that is computed
   * and seen nearly full has no shadow to tell.
   */
  static boolean isElsewhere(Optional<ExpectedPhase> expected, LitArea lit) {
    return expected.isPresent() && isElsewhere(expected.get(), lit);
  }

  private static boolean isElsewhere(ExpectedPhase e, LitArea lit) {
    Illumination light = light(e, 0);
    double litInShadow = lit.litInShadow(light);
    return litInShadow > MOST_LIT_IN_SHADOW
        || (litInShadow > LIT_BY_TURN && Math.abs(turn(e, lit)) > TURNED_RAD)
        || lit.missing(light).share() > MOST_MISSING_BELOW;
  }

  private static double turn(ExpectedPhase e, LitArea lit) {
    return Math.IEEEremainder(lit.directionRad() - e.brightLimbRad(), 2 * Math.PI);
  }

  private static boolean agrees(ExpectedPhase e, LitArea lit) {
    LitArea.Missing missing = lit.missing(light(e, 0));
    double offBelow =
        Math.abs(Math.IEEEremainder(missing.directionRad() + Math.PI / 2, 2 * Math.PI));
    return missing.share() < (offBelow < BELOW_SPREAD_RAD ? MOST_MISSING_BELOW : MOST_MISSING);
  }

  private static Illumination light(ExpectedPhase e, double turnRad) {
    return Illumination.of(e.illuminatedFraction(), e.brightLimbRad() + turnRad);
  }

  /**
   * Relative standard uncertainty of the strip that the terminator hides beside the limb: the strip
   * goes with the square of the Sun's component across, and rough ground frays it.
   */
  double stripDoubt(double x, double y) {
    double phase = 2 * expectation().phaseUncertaintyRad() / Math.max(1e-3, Math.hypot(x, y));
    return Math.max(0.2, Math.min(1, Math.hypot(0.15, phase)));
  }

  double turnDoubtRad() {
    return expectation().brightLimbUncertaintyRad();
  }

  boolean isKnown() {
    return expected.isPresent();
  }

  private ExpectedPhase expectation() {
    return expected.orElseThrow();
  }

  /** With the Sun turned from its computed direction; must be known. */
  Illumination light(double turnRad) {
    return light(expectation(), turnRad);
  }

  /** Must be known. */
  Illumination light() {
    return light(0);
  }
}
