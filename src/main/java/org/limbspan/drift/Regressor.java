package org.limbspan.drift;

/** What a residual may go with, by an amount to be estimated. */
interface Regressor {

  /** Goes with nothing. */
  Regressor NONE = fact -> 0;

  /** The geocentric part of the predicted size. */
  Regressor SWING = fact -> fact.swing;

  /** The topocentric part of the predicted size: the parallax. */
  Regressor RATIO = fact -> fact.parallax;

  /** The flattening of the disc by refraction. */
  Regressor FLATTENING = fact -> fact.flattening;

  double of(Fact fact);

  /** One from a day on, before it nothing. */
  static Regressor stepFrom(double day) {
    return fact -> fact.day >= day ? 1 : 0;
  }

  /** Days since a day, before it nothing. */
  static Regressor slopeFrom(double day) {
    return fact -> Math.max(0, fact.day - day);
  }
}
