package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.CatalogueStar;

/**
 * One star of a pair, as it was typed from a catalogue; no proper motion is a motion of nothing.
 */
record StarForm(
    @Nullable String rightAscension,
    @Nullable String declination,
    @Nullable String motionEast,
    @Nullable String motionNorth) {

  static final StarForm EMPTY = new StarForm(null, null, null, null);

  private static final double MOST_MAS_PER_YEAR = 20_000;

  /** What is wrong with it, by the name of the field below {@code name}. */
  void complain(Map<String, String> complaints, String name) {
    if (ra().isEmpty()) {
      complaints.put(
          name + ".rightAscension",
          "Expected a right ascension such as 5h 34m 32.0s, 05:34:32.0, or 83.633 in degrees.");
    }
    if (dec().isEmpty()) {
      complaints.put(
          name + ".declination",
          "Expected a declination such as \u22125\u00b0 23\u2032 14\u2033, or \u22125.387 in"
              + " degrees.");
    }
    if (motion(motionEast).isEmpty()) {
      complaints.put(name + ".motionEast", MOTION);
    }
    if (motion(motionNorth).isEmpty()) {
      complaints.put(name + ".motionNorth", MOTION);
    }
  }

  private static final String MOTION =
      "Expected milliarcseconds a year between \u221220000 and 20000, or nothing.";

  boolean isBlank() {
    return text(rightAscension).isEmpty() && text(declination).isEmpty();
  }

  /** The star of a form without complaints. */
  CatalogueStar star() {
    return new CatalogueStar(
        ra().orElseThrow(),
        dec().orElseThrow(),
        motion(motionEast).orElseThrow(),
        motion(motionNorth).orElseThrow());
  }

  /** As it was typed, for the note of the calibration. */
  String words() {
    String place = text(rightAscension) + ", " + text(declination);
    boolean moves = !text(motionEast).isEmpty() || !text(motionNorth).isEmpty();
    return moves ? place + " (" + or0(motionEast) + ", " + or0(motionNorth) + " mas/yr)" : place;
  }

  private static String or0(@Nullable String typed) {
    return text(typed).isEmpty() ? "0" : text(typed);
  }

  private Optional<Double> ra() {
    return CelestialCoordinate.rightAscensionDeg(text(rightAscension));
  }

  private Optional<Double> dec() {
    return CelestialCoordinate.declinationDeg(text(declination));
  }

  private static OptionalDouble motion(@Nullable String typed) {
    OptionalDouble value = TypedNumber.of(or0(typed));
    return Math.abs(value.orElse(0)) <= MOST_MAS_PER_YEAR ? value : OptionalDouble.empty();
  }
}
