package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A figure whose both axes are told by the server: what the browser needs to draw it and to write
 * it down as a table.
 *
 * @param layers from the bottom up
 * @param bands stretches of the first axis to shade
 * @param uprights places on the first axis with a word
 * @param thinned whether points were left out that would have fallen on others
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record Drawing(
    Axis across,
    Axis up,
    List<Layer> layers,
    List<Band> bands,
    List<Upright> uprights,
    String timeZone,
    boolean thinned) {

  Drawing {
    layers = List.copyOf(layers);
    bands = List.copyOf(bands);
    uprights = List.copyOf(uprights);
  }

  static Drawing of(Axis across, Axis up, List<Layer> layers) {
    return new Drawing(across, up, layers, List.of(), List.of(), "UTC", false);
  }

  Drawing in(RigTime time) {
    return new Drawing(across, up, layers, bands, uprights, time.zone().getId(), thinned);
  }

  Drawing thinnedIf(boolean so) {
    return new Drawing(across, up, layers, bands, uprights, timeZone, so);
  }

  Drawing withBands(List<Band> more) {
    return new Drawing(across, up, layers, more, uprights, timeZone, thinned);
  }

  Drawing withUprights(List<Upright> more) {
    return new Drawing(across, up, layers, bands, more, timeZone, thinned);
  }

  /**
   * One axis.
   *
   * @param unit what stands behind each number, such as {@code ′}; empty for none
   * @param from and {@code to}: what is shown at least; absent where the points decide
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Axis(
      String name, String unit, Kind kind, Sign sign, @Nullable Double from, @Nullable Double to) {

    static Axis number(String name, String unit) {
      return new Axis(name, unit, Kind.NUMBER, Sign.IF_NEGATIVE, null, null);
    }

    static Axis signed(String name, String unit) {
      return new Axis(name, unit, Kind.NUMBER, Sign.ALWAYS, null, null);
    }

    static Axis time(String name) {
      return new Axis(name, "", Kind.TIME, Sign.IF_NEGATIVE, null, null);
    }

    Axis reaching(double low, double high) {
      return new Axis(name, unit, kind, sign, low, high);
    }
  }

  /** What an axis counts. */
  enum Kind {
    /** Seconds of the epoch. */
    @JsonProperty("time")
    TIME,
    @JsonProperty("number")
    NUMBER
  }

  /** When a number bears a sign. */
  enum Sign {
    @JsonProperty("always")
    ALWAYS,
    @JsonProperty("if-negative")
    IF_NEGATIVE
  }

  /** How a layer looks; the browser knows each by name. */
  enum Look {
    /** Full discs with bars. */
    @JsonProperty("observed")
    OBSERVED,
    /** Open rings with bars: a scale that is not independent. */
    @JsonProperty("inferred")
    INFERRED,
    /** Discs in the colour of a judgement: the readings that show it. */
    @JsonProperty("shown")
    SHOWN,
    /** Open diamonds. */
    @JsonProperty("computed")
    COMPUTED,
    /** A plain line in the colour of computation. */
    @JsonProperty("line")
    LINE,
    /** A broken line in the colour of computation. */
    @JsonProperty("broken")
    BROKEN,
    /** A heavy line in the colour of a judgement. */
    @JsonProperty("judged")
    JUDGED
  }

  /**
   * Points or a line, by rising {@code x}.
   *
   * @param half half lengths of the bars: k = 2; absent for none
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Layer(
      String name, Look look, List<Double> x, List<Double> y, @Nullable List<Double> half) {}

  record Band(double from, double to) {}

  record Upright(double at, String word) {}
}
