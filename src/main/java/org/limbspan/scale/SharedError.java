package org.limbspan.scale;

/**
 * One unknown but constant relative error that several calibrations may share: two calibrations
 * with equal sources were made with the same sheet, along the same tape or on the same stars, and
 * err together.
 *
 * @param source what errs, so that equal means the same thing
 * @param relativeUncertainty its standard uncertainty in the plate scale, as a fraction; 0 or more
 */
record SharedError(Source source, double relativeUncertainty) {

  /** A sheet, a distance or a pair of stars, known by its stated value and uncertainty. */
  record Source(Kind kind, double value, double uncertainty) {}

  /** What a calibration rests on beside the image. */
  enum Kind {
    TARGET_LENGTH,
    /** Measured afresh or not: nobody can tell, so each question takes the careful answer. */
    TARGET_DISTANCE,
    STAR_SEPARATION
  }
}
