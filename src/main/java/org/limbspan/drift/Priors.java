package org.limbspan.drift;

/**
 * How often things happen to a rig, before its readings are looked at, and how large they are.
 * These are choices, not measurements: together with {@link #ALARM} they set the rate of false
 * alerts, which the bench measures.
 */
final class Priors {

  /** ln of the odds that something changed against that nothing did, from which on it is said. */
  static final double ALARM = -0.2;

  /** ln of the odds below which what was said is taken back. */
  static final double RETRACT = -1.5;

  /** No judgement before so many readings of a setup. */
  static final int LEAST_READINGS = 12;

  static final double STEPS_PER_DAY = 0.5 / 365.25;
  static final double DRIFTS_PER_DAY = 0.25 / 365.25;
  static final double SCATTERS_PER_DAY = 0.05 / 365.25;
  static final double AXES_PER_DAY = 0.03 / 365.25;
  static final double CLOCKS_PER_DAY = 0.03 / 365.25;
  static final double ENDS_PER_DAY = 0.15 / 365.25;

  /** Days that a visit to the rig counts for, besides the days since the last. */
  static final double VISIT_DAYS = 0.25;

  static final double WRONG_CALIBRATION = 0.02;
  static final double WRONG_TARGET = 0.01;
  static final double SWING = 0.003;
  static final double RATIO = 0.003;
  static final double NEAR_MOON = 0.001;
  static final double WILD_RATIO = 0.001;
  static final double FLATTENING = 0.001;
  static final double AXIS_FROM_START = 0.005;
  static final double CLOCK_FROM_START = 0.005;

  /** Standard deviations of the height of small, large and gross steps, and their shares. */
  static final double SMALL_STEP = 0.008;

  static final double LARGE_STEP = 0.05;
  static final double GROSS_STEP = 0.5;
  static final double SMALL_STEP_SHARE = 0.75;
  static final double LARGE_STEP_SHARE = 0.2;
  static final double GROSS_STEP_SHARE = 0.05;

  /** Standard deviations of slow and fast drifts per day. */
  static final double SLOW_DRIFT = 0.0012 / 30;

  static final double FAST_DRIFT = 0.006 / 30;
  static final double SLOW_DRIFT_SHARE = 0.5;

  static final double SCATTER_FACTOR = 2.5;

  /** Standard deviation of the level before anything is known of it. */
  static final double LEVEL = 1;

  /** What all calibrations share, besides what is stated. */
  static final double TARGET = 0.0012;

  /** The same where the target is wrong. */
  static final double TARGET_WRONG = 0.05;

  static final double SWING_SIZE = 0.2;
  static final double RATIO_SIZE = 0.5;

  /** Of a world that is nothing like the computed one. */
  static final double WILD_RATIO_SIZE = 40;

  static final double WILD_NOISE = 60;

  static final double FLATTENING_SIZE = 0.6;

  /** How far the flattening may be from that of the mean air, throughout. */
  static final double AXIS_SLACK = 0.1;

  private Priors() {}

  static double square(double x) {
    return x * x;
  }
}
