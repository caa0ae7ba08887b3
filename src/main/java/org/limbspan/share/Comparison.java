package org.limbspan.share;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A rig beside its guests.
 *
 * @param rigs the rig itself first
 */
public record Comparison(List<Compared> rigs, List<Parallax> parallaxes) {

  public Comparison {
    rigs = List.copyOf(rigs);
    parallaxes = List.copyOf(parallaxes);
  }

  /** A value with its standard uncertainty. */
  public record Figure(double value, double uncertainty) {}

  /**
   * What one rig's readings say.
   *
   * @param guestId absent for the rig itself
   * @param nightRatio mean of high over low size
   * @param nightGrowth of it over that computed for the same pairs
   * @param swing change over the months, observed over computed
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Compared(
      @Nullable Long guestId,
      String name,
      double latitudeDeg,
      double longitudeDeg,
      double positionDeg,
      int readingCount,
      int pairCount,
      @Nullable Figure nightRatio,
      @Nullable Figure nightGrowth,
      @Nullable Figure swing,
      @Nullable Figure monthlySwingPercent) {}

  /**
   * The Moon's distance from readings of two sites at the same time.
   *
   * @param withinMinutes how far apart in time a pair may be
   * @param parallax Earth's equatorial radius over the distance, position's part included
   * @param positionUncertainty part of the parallax's uncertainty that comes from rounded positions
   * @param distanceEarthRadii absent where the parallax is not three uncertainties above zero
   * @param leverage span of the difference of the two sines of altitude
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Parallax(
      long guestId,
      String name,
      int pairCount,
      int withinMinutes,
      @Nullable Figure parallax,
      @Nullable Double positionUncertainty,
      @Nullable Figure distanceEarthRadii,
      @Nullable Double leverage) {}
}
