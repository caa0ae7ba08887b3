package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Every night pair, and what they say together. A ratio is high size over low size. */
public record NightsResult(List<Night> nights, Summary summary) {

  public NightsResult {
    nights = List.copyOf(nights);
  }

  /**
   * One night pair.
   *
   * @param uncertainty standard uncertainty of the observed ratio
   * @param verdict {@code agrees}, {@code departs} or {@code too-few}
   */
  public record Night(
      Instant culminationAt,
      Instant lowAt,
      Instant highAt,
      double lowAltitudeDeg,
      double highAltitudeDeg,
      String axis,
      int readingCount,
      double observedRatio,
      double uncertainty,
      double predictedRatio,
      String verdict) {}

  /**
   * All pairs together.
   *
   * @param slope observed over predicted logarithmic ratio: 1 as predicted, 0 for no change at all
   * @param meanObservedRatio weighted by what each pair can tell
   * @param distanceEarthRadii the Moon's mean distance in Earth radii from the night pairs alone
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Summary(
      int pairCount,
      @Nullable Double slope,
      @Nullable Double slopeUncertainty,
      @Nullable Double meanObservedRatio,
      @Nullable Double meanPredictedRatio,
      @Nullable Double meanRatioUncertainty,
      @Nullable Double distanceEarthRadii,
      @Nullable Double distanceUncertaintyEarthRadii,
      String verdict) {}
}
