package org.limbspan.drift;

/**
 * What is supposed of the square of the factor between true and stated uncertainties: an inverse
 * gamma distribution.
 */
record NoisePrior(double shape, double rate) {

  /** Stated uncertainties are right within some 30 percent: worth eight readings. */
  static final NoisePrior AS_STATED = new NoisePrior(4, 4);
}
