package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;

/**
 * What the readings say of the Moon's months without anybody's table of distances, and of their own
 * noise. A figure that they cannot carry yet is absent.
 *
 * @param spanDays from the first reading to the last; 0 without one
 * @param readingUncertainty relative standard uncertainty of one reading, as the readings
 *     themselves show it: the stated one (median) times the factor found
 * @param nightUncertainty relative: uncertainty of the growth within one of this rig's night pairs
 *     as a share of the growth computed for it
 * @param computedAltitudes by the altitudes of an ephemeris
 * @param sightedAltitudes by the observer's own altitudes
 * @param sightedCount readings with an altitude of the observer's own
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record OwnResult(
    double spanDays,
    @Nullable Double readingUncertainty,
    @Nullable Double nightUncertainty,
    @Nullable Own computedAltitudes,
    @Nullable Own sightedAltitudes,
    int sightedCount) {

  static final OwnResult NONE = new OwnResult(0, null, null, null, null, 0);

  /**
   * The readings' own months.
   *
   * @param swingPercent mean of the months: perigee over apogee size, less one
   * @param apsidalEccentricity (D - d) / (D + d) of the same sizes (A. E. Roy and D. Clarke)
   * @param distanceEarthRadii by night pairs alone; absent where they do not tell it
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Own(
      int readingCount,
      int monthCount,
      CycleResult.Quantity periodDays,
      CycleResult.Quantity eccentricity,
      CycleResult.Quantity swingPercent,
      CycleResult.Quantity apsidalEccentricity,
      CycleResult.@Nullable Quantity distanceEarthRadii) {}
}
