package org.limbspan.drift;

/**
 * Another way to look at the same readings: what the residual would be expected to be if, say, the
 * axis had been logged wrongly.
 */
interface Lens {

  /** Takes every reading as it was logged. */
  Lens AS_LOGGED = fact -> 0;

  /** Expected residual of a reading under this reinterpretation, as a natural logarithm. */
  double offset(Fact fact);

  /** Log-likelihood of what was sighted, against taking the reading as it was logged. */
  default double logOdds(Fact fact) {
    return 0;
  }
}
