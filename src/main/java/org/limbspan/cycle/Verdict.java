package org.limbspan.cycle;

/** What readings say of a prediction. */
public enum Verdict {
  /** Within three standard uncertainties of the prediction. */
  AGREES("agrees"),
  /** Beyond three standard uncertainties: one in 370 by chance, were the noise purely normal. */
  DEPARTS("departs"),
  /** Too few readings, or too much alike, to tell the predicted effect from none. */
  TOO_FEW("too-few");

  private static final double LIMIT_SIGMAS = 3;

  private final String label;

  Verdict(String label) {
    this.label = label;
  }

  /** The word used in answers. */
  public String label() {
    return label;
  }

  /**
   * The verdict on an estimate.
   *
   * @param enoughUncertainty uncertainty above which agreement would mean nothing
   */
  static Verdict of(Estimate estimate, double expected, double enoughUncertainty) {
    if (Math.abs(estimate.value() - expected) > LIMIT_SIGMAS * estimate.uncertainty()) {
      return DEPARTS;
    }
    return estimate.uncertainty() > enoughUncertainty ? TOO_FEW : AGREES;
  }
}
