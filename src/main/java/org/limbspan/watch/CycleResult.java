package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the readings say of the monthly cycle. A figure that the readings cannot carry yet is
 * absent.
 *
 * @param readingCount readings that went into it
 * @param swing observed against predicted change of size
 * @param period anomalistic month from the readings alone
 * @param eccentricity of the Moon's orbit from the readings alone
 * @param moonDiameterKm the Moon's true diameter by the distance law
 * @param remarks in words: readings set aside and why, scales that were inferred
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CycleResult(
    int readingCount,
    Swing swing,
    @Nullable Period period,
    @Nullable Quantity eccentricity,
    @Nullable Quantity moonDiameterKm,
    List<Month> months,
    List<String> remarks) {

  public CycleResult {
    months = List.copyOf(months);
    remarks = List.copyOf(remarks);
  }

  /**
   * Regression of observed on predicted relative size: slope 1 where the swing is as predicted.
   *
   * @param verdict {@code agrees}, {@code departs} or {@code too-few}
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Swing(@Nullable Double slope, @Nullable Double slopeUncertainty, String verdict) {}

  /** The anomalistic month. */
  public record Period(double days, double uncertaintyDays) {}

  /** A value with its standard uncertainty. */
  public record Quantity(double value, double uncertainty) {}

  /**
   * One anomalistic month, from perigee to perigee.
   *
   * @param observedSwingPercent absent where the month's readings cannot carry one
   * @param verdict {@code agrees}, {@code departs} or {@code too-few}
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Month(
      Instant perigeeAt,
      Instant apogeeAt,
      Instant nextPerigeeAt,
      int readingCount,
      @Nullable Double observedSwingPercent,
      @Nullable Double uncertaintyPercent,
      double predictedSwingPercent,
      String verdict) {}
}
