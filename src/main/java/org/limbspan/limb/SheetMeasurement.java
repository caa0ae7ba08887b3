package org.limbspan.limb;

import java.util.List;
import java.util.OptionalDouble;

/** What became of a calibration photograph. */
public sealed interface SheetMeasurement {

  /**
   * A corner of the sheet, pixels, y down.
   *
   * @param x from the middle of the left-most pixel
   * @param y from the middle of the topmost pixel
   */
  record Corner(double x, double y) {}

  /**
   * The sheet was measured.
   *
   * @param tallSidePx mean of both tall sides
   * @param tallSideUncertaintyPx standard uncertainty from the edges' scatter and the edge model
   * @param shortSidePx mean of both short sides
   * @param shortSideUncertaintyPx its standard uncertainty
   * @param corners in turn
   * @param unequalSides relative difference of the two tall sides, the larger over the smaller less
   *     1: the sheet is turned about its tall axis, which does not shorten it
   * @param shortening share by which the tall side looks too short against the short one, positive
   *     when the sheet leans back or forth; empty when the proportion is not known
   * @param edgeFwhmPx width of the edges
   */
  record Measured(
      double tallSidePx,
      double tallSideUncertaintyPx,
      double shortSidePx,
      double shortSideUncertaintyPx,
      List<Corner> corners,
      double unequalSides,
      OptionalDouble shortening,
      double edgeFwhmPx)
      implements SheetMeasurement {

    public Measured {
      corners = List.copyOf(corners);
    }
  }

  /**
   * The photograph gives no length.
   *
   * @param found the figure that decided, in the unit that {@code expected} names
   */
  record Refused(SheetRefusal reason, double found, String expected) implements SheetMeasurement {}
}
