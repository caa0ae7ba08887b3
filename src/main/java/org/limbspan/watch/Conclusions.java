package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The two questions, answered as far as a rig's own readings go.
 *
 * @param selfReliant whether only what depends on nobody else's tables is told
 * @param statements every figure, with what it rests on
 * @param sightedCount readings with an altitude of the observer's own
 * @param hypotheses absent where only what depends on nobody's tables is told
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Conclusions(
    boolean selfReliant,
    int readingCount,
    int pairCount,
    int monthCount,
    double spanDays,
    int sightedCount,
    Question withinANight,
    Question withinAMonth,
    List<Statement> statements,
    Prediction predictions,
    @Nullable Support hypotheses,
    List<Outlook> outlook) {

  public Conclusions {
    statements = List.copyOf(statements);
    outlook = List.copyOf(outlook);
  }

  /** What an answer may be. */
  public enum Reply {
    /** The size changes, by three standard uncertainties or more. */
    @JsonProperty("changes")
    CHANGES,
    /** No change found. */
    @JsonProperty("no-change-found")
    NO_CHANGE_FOUND,
    /** The readings cannot tell. */
    @JsonProperty("too-few")
    TOO_FEW
  }

  /** What a figure rests on besides the rig's own readings. */
  public enum Basis {
    /** Nothing of anybody else's. */
    @JsonProperty("readings")
    READINGS,
    /** Directions of the Moon from an ephemeris, none of its distances. */
    @JsonProperty("computed-directions")
    COMPUTED_DIRECTIONS,
    /** Distances of the Moon from an ephemeris. */
    @JsonProperty("computed-distances")
    COMPUTED_DISTANCES
  }

  /** Quantities; their units are those of {@link Statement#unit}. */
  public enum Quantity {
    @JsonProperty("night-ratio")
    NIGHT_RATIO(""),
    @JsonProperty("night-growth-over-computed")
    NIGHT_GROWTH(""),
    @JsonProperty("monthly-swing")
    MONTHLY_SWING("percent"),
    @JsonProperty("swing-over-computed")
    SWING_OVER_COMPUTED(""),
    @JsonProperty("moon-distance")
    MOON_DISTANCE("earth radii"),
    @JsonProperty("anomalistic-month")
    ANOMALISTIC_MONTH("d"),
    @JsonProperty("eccentricity")
    ECCENTRICITY(""),
    @JsonProperty("moon-diameter")
    MOON_DIAMETER("km"),
    @JsonProperty("hypotheses")
    HYPOTHESES("log10");

    private final String unit;

    Quantity(String unit) {
      this.unit = unit;
    }

    /** Empty for a mere number. */
    public String unit() {
      return unit;
    }
  }

  /**
   * A question and its answer.
   *
   * @param changePercent found; absent where nothing can be said
   * @param tellablePercent a change of this size would have been found: three uncertainties
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Question(
      Reply reply,
      @Nullable Double changePercent,
      @Nullable Double uncertaintyPercent,
      @Nullable Double tellablePercent,
      Basis basis) {}

  /**
   * One figure.
   *
   * @param computed what an ephemeris or a handbook gives; absent where nobody's tables are asked
   * @param verdict {@code agrees}, {@code departs}, {@code too-few}; absent where none is drawn
   * @param calibrated whether it hangs on the calibrations
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Statement(
      Quantity quantity,
      double value,
      double uncertainty,
      String unit,
      @Nullable Double computed,
      @Nullable String verdict,
      Basis basis,
      boolean calibrated,
      int count) {}

  /**
   * What each hypothesis says of a night at this latitude: size at culmination over size at rising,
   * the Moon over the equator.
   *
   * @param ruleOfThumbPercent the Earth's radius times cos(latitude) over the distance
   */
  public record Prediction(
      double latitudeDeg,
      double nearMoonHeightKm,
      double nearMoonRatio,
      double orbitingMoonRatio,
      double ruleOfThumbPercent) {}

  /** The same readings under both hypotheses. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Support(
      List<HypothesesResult.Hypothesis> hypotheses,
      @Nullable Double log10BayesFactor,
      List<HypothesesResult.Sensitivity> sensitivity) {

    public Support {
      hypotheses = List.copyOf(hypotheses);
      sensitivity = List.copyOf(sensitivity);
    }
  }

  /** Of what so many more are needed. */
  public enum Unit {
    @JsonProperty("night-pairs")
    NIGHT_PAIRS,
    @JsonProperty("months")
    MONTHS,
    @JsonProperty("sighted-altitudes")
    SIGHTED_ALTITUDES
  }

  /**
   * What the readings cannot tell yet, or can since.
   *
   * @param wanted standard uncertainty wanted; for the hypotheses the power of ten of the odds; for
   *     the night ratio 1: the growth computed told from none with 9 chances in 10
   * @param more how many more; 0 where it is reached; absent where nothing can be foretold
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Outlook(Quantity quantity, double wanted, @Nullable Long more, Unit unit) {}
}
