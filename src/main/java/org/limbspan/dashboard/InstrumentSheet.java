package org.limbspan.dashboard;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The page of the rig itself, in words ready to print. */
record InstrumentSheet(
    String standing,
    String scaleSummary,
    String unit,
    List<SetupLine> setups,
    List<CalibrationLine> calibrations,
    @Nullable Budget budget,
    String example,
    String confirmation) {

  /**
   * @param agreement whether its calibrations agree; empty where there are not two
   */
  record SetupLine(
      String number,
      String span,
      String calibrations,
      String scale,
      String agreement,
      String note) {}

  /**
   * @param offMean from the mean of its setup, percent
   */
  record CalibrationLine(
      long id,
      String taken,
      String setup,
      String target,
      String distance,
      String measured,
      String scale,
      String offMean,
      String note) {}

  /**
   * Where the uncertainty of a diameter comes from.
   *
   * @param limit what weighs most
   */
  record Budget(
      String caption, List<Part> parts, List<Part> sums, String limit, List<Plan> plans) {}

  record Part(
      String quantity, String estimate, String uncertainty, String sensitivity, String percent) {}

  /** What another calibration would buy. */
  record Plan(String words, String scale, String diameter) {}
}
