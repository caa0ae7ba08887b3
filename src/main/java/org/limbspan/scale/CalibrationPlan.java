package org.limbspan.scale;

/**
 * What a calibration is worth, and what it would be worth done otherwise: the uncertainty budget of
 * a plate scale by the law of propagation (JCGM 100:2008, 5.1.2; relative uncertainties of a
 * product add in quadrature, 5.1.6).
 *
 * @param target what is photographed
 * @param measured its length in one image
 * @param tapeReadings how often the distance was measured afresh, 1 or more; their mean counts
 * @param photographs how many images are measured, 1 or more; their mean counts
 */
public record CalibrationPlan(
    Target target, ImageLength measured, int tapeReadings, int photographs) {

  public CalibrationPlan {
    requireOneOrMore("tapeReadings", tapeReadings);
    requireOneOrMore("photographs", photographs);
  }

  private static void requireOneOrMore(String name, int value) {
    if (value < 1) {
      throw new IllegalArgumentException(name + " " + value + ": expected 1 or more");
    }
  }

  /** Standard uncertainty of the scale, as a fraction, from the length of the target. */
  public double fromLength() {
    return shared(SharedError.Kind.TARGET_LENGTH);
  }

  /** Standard uncertainty of the scale, as a fraction, from the distance of the target. */
  public double fromDistance() {
    return shared(SharedError.Kind.TARGET_DISTANCE) / Math.sqrt(tapeReadings);
  }

  /** Standard uncertainty of the scale, as a fraction, from measuring the images. */
  public double fromImages() {
    return measured.relativeUncertainty() / Math.sqrt(photographs);
  }

  /** Combined standard uncertainty of the scale, as a fraction. */
  public double combined() {
    return Math.hypot(Math.hypot(fromLength(), fromDistance()), fromImages());
  }

  /** With the target {@code factor} times as far away, the tape and the measuring as good. */
  public CalibrationPlan atTimesTheDistance(double factor) {
    return with(
        new Target(
            target.lengthMm(),
            target.lengthUncertaintyMm(),
            factor * target.distanceM(),
            target.distanceUncertaintyM()));
  }

  /** With a target {@code factor} times as long, the ruler and the measuring as good. */
  public CalibrationPlan withTimesTheLength(double factor) {
    return with(
        new Target(
            factor * target.lengthMm(),
            target.lengthUncertaintyMm(),
            target.distanceM(),
            target.distanceUncertaintyM()));
  }

  /** With so many more tape readings of the same distance. */
  public CalibrationPlan withMoreTapeReadings(int more) {
    return new CalibrationPlan(target, measured, tapeReadings + more, photographs);
  }

  /** With so many more photographs of the same target. */
  public CalibrationPlan withMorePhotographs(int more) {
    return new CalibrationPlan(target, measured, tapeReadings, photographs + more);
  }

  /** The image of another target is as much longer as the target spans more. */
  private CalibrationPlan with(Target other) {
    double longer = other.angleArcsec() / target.angleArcsec();
    return new CalibrationPlan(
        other,
        new ImageLength(longer * measured.value(), measured.uncertainty(), measured.unit()),
        tapeReadings,
        photographs);
  }

  private double shared(SharedError.Kind kind) {
    return target.sharedErrors().stream()
        .filter(error -> error.source().kind() == kind)
        .mapToDouble(SharedError::relativeUncertainty)
        .sum();
  }
}
