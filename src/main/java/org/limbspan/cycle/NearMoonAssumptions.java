package org.limbspan.cycle;

import java.util.Arrays;
import java.util.List;

/**
 * What the near-Moon hypothesis is taken to say where its authors leave it open.
 *
 * @param height of the Moon above the ground
 * @param monthlyChange of its size
 */
public record NearMoonAssumptions(Height height, MonthlyChange monthlyChange) {

  /** 3000 miles, and a monthly change of its own: the most generous of the usual forms. */
  public static final NearMoonAssumptions USUAL =
      new NearMoonAssumptions(Height.FIXED, MonthlyChange.FREE);

  /** Every form, in a fixed order. */
  public static final List<NearMoonAssumptions> ALL =
      Arrays.stream(Height.values())
          .flatMap(
              height ->
                  Arrays.stream(MonthlyChange.values())
                      .map(change -> new NearMoonAssumptions(height, change)))
          .toList();

  /** Height above the ground. */
  public enum Height {
    /** {@link NearMoon#HEIGHT_KM}. */
    FIXED,
    /** Anything from 1000 to 20,000 km, each ratio alike. */
    FREE
  }

  /** Change of the size over the month. */
  public enum MonthlyChange {
    /** None. */
    NONE,
    /**
     * Some power of the computed monthly change (as seen from the Earth's centre), the exponent
     * normal about 0 with standard deviation 1.
     */
    FREE
  }
}
