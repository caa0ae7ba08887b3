package org.limbspan.limb;

import java.util.OptionalDouble;

/**
 * What is known of a calibration target.
 *
 * @param leastSidePx shortest tall side to measure, 20 to 2000 pixels
 * @param tallOverShort proportion of the sheet's sides when it is known: 297 / 210 for A4, 11 / 8.5
 *     for Letter; above 1.01
 */
public record SheetOptions(double leastSidePx, OptionalDouble tallOverShort) {

  public SheetOptions {
    if (!(leastSidePx >= 20 && leastSidePx <= 2000)) {
      throw new IllegalArgumentException("leastSidePx " + leastSidePx + ": expected 20 to 2000");
    }
    if (tallOverShort.isPresent() && !(tallOverShort.getAsDouble() > 1.01)) {
      throw new IllegalArgumentException(
          "tallOverShort " + tallOverShort.getAsDouble() + ": expected above 1.01");
    }
  }

  public static SheetOptions standard() {
    return new SheetOptions(60, OptionalDouble.empty());
  }

  public static SheetOptions ofProportion(double tallOverShort) {
    return new SheetOptions(60, OptionalDouble.of(tallOverShort));
  }
}
