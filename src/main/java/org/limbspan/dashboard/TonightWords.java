package org.limbspan.dashboard;

import org.limbspan.sky.MoonSight;
import org.limbspan.sky.PassOverLine;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindow;
import org.limbspan.sky.SkyLight;

/** Directions, lights and phases in words. */
final class TonightWords {

  private static final String[] DIRECTIONS = {
    "north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"
  };

  private TonightWords() {}

  /** The nearest of eight directions. */
  static String direction(double azimuthDeg) {
    return DIRECTIONS[(int) Math.round(azimuthDeg / 45) % 8];
  }

  /** Where the rig's own horizon lets the Moon be seen on its pass. */
  static String ownHorizon(TonightFacts.OwnHorizon own) {
    if (own.seen().isEmpty()) {
      return "It does not come over the line entered for this rig.";
    }
    PassOverLine seen = own.seen().get();
    String rise = seen.rise().map(sight -> "comes over it at " + altitude(sight)).orElse("");
    String set = seen.set().map(sight -> "goes behind it at " + altitude(sight)).orElse("");
    if (rise.isEmpty() && set.isEmpty()) {
      return "It stays over the line entered for this rig.";
    }
    return "The outline is the line entered for this rig: the Moon "
        + rise
        + (rise.isEmpty() || set.isEmpty() ? "" : " and ")
        + set
        + ".";
  }

  /** {@code 113°, south-east}. */
  static String azimuth(MoonSight sight) {
    long deg = Math.round(sight.azimuthDeg()) % 360;
    return deg + "\u00b0, " + direction(sight.azimuthDeg());
  }

  static String altitude(MoonSight sight) {
    return Typeset.places(sight.apparentAltitudeDeg(), 1) + "\u00b0";
  }

  static String light(SkyLight light) {
    return switch (light) {
      case DAY -> "day";
      case CIVIL_TWILIGHT -> "civil twilight";
      case NAUTICAL_TWILIGHT -> "nautical twilight";
      case ASTRONOMICAL_TWILIGHT -> "astronomical twilight";
      case NIGHT -> "night";
    };
  }

  static String place(ShootingWindow.Place place) {
    return switch (place) {
      case LOW_RISING -> "low, after rise";
      case HIGH -> "high";
      case LOW_SETTING -> "low, before set";
    };
  }

  static String phase(MoonSight sight, boolean waxing) {
    double lit = sight.illuminatedFraction();
    if (lit < 0.01) {
      return "new Moon";
    }
    if (lit < 0.45) {
      return waxing ? "waxing crescent" : "waning crescent";
    }
    if (lit <= 0.55) {
      return waxing ? "about first quarter" : "about last quarter";
    }
    if (lit < 0.99) {
      return waxing ? "waxing gibbous" : "waning gibbous";
    }
    return "full Moon";
  }

  static String withheld(ShootingPlan.Withheld withheld) {
    String window = "The window \u201c" + place(withheld.place()) + "\u201d ";
    return switch (withheld.reason()) {
      case OUT_OF_REACH ->
          withheld.place() == ShootingWindow.Place.HIGH
              ? "There is no high reading: the Moon does not come above 20\u00b0 in this pass."
              : window
                  + "is not there: the Moon does not pass through 8\u00b0 to 15\u00b0 on that side.";
      case SUN_TOO_NEAR ->
          window
              + "is not offered: the Sun is up and less than 20\u00b0 from the Moon. Point no lens and no"
              + " eye there.";
      case CUT_FOR_THE_SUN ->
          window
              + "is cut short: for the rest of it the Sun is up and less than 20\u00b0 from the Moon."
              + " Keep to the minutes given.";
      case BEHIND_THE_LINE ->
          window + "is not offered: the Moon then stands behind the horizon line of this rig.";
      case CUT_FOR_THE_LINE ->
          window + "is cut short: for the rest of it the horizon line of this rig hides the Moon.";
      case NEW_MOON ->
          window + "is not offered: less than 1 % of the Moon is lit, too little limb to measure.";
    };
  }
}
