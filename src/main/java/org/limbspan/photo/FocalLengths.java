package org.limbspan.photo;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Setup;

/**
 * Holds a photograph's focal length to that of the others of its setup. Another one is another
 * plate scale: the photograph belongs to a new setup, or the zoom was moved by accident.
 */
final class FocalLengths {

  /**
   * How far two focal lengths may lie apart, over the smaller: files tell them in whole millimetres
   * or tenths.
   */
  private static final double TOLERANCE = 0.005;

  /** A photograph that tells its focal length. */
  record Told(Instant takenAt, double focalLengthMm) {}

  private final Function<Instant, Setup> setups;
  private final List<Told> held;
  private final PageTime time;

  /**
   * Of a rig.
   *
   * @param zone in which pages tell instants
   */
  FocalLengths(Function<Instant, Setup> setups, List<Told> held, ZoneId zone) {
    this.setups = setups;
    this.time = new PageTime(zone);
    this.held = new ArrayList<>(held);
  }

  /** Refuses a photograph whose focal length is not that of its setup, else counts it in. */
  void take(Instant takenAt, @Nullable Double focalLengthMm) throws RefusedPhoto {
    if (focalLengthMm == null) {
      return;
    }
    Setup setup = setups.apply(takenAt);
    List<Told> others =
        held.stream()
            .filter(each -> setups.apply(each.takenAt()).number() == setup.number())
            .sorted(Comparator.comparing(Told::takenAt))
            .toList();
    for (Told other : others) {
      double apart = Math.abs(Math.log(focalLengthMm / other.focalLengthMm()));
      if (apart > TOLERANCE) {
        throw refused(takenAt, focalLengthMm, setup, others, other.focalLengthMm());
      }
    }
    held.add(new Told(takenAt, focalLengthMm));
  }

  private RefusedPhoto refused(
      Instant takenAt, double found, Setup setup, List<Told> others, double expected) {
    Instant lastBefore = null;
    for (Told other : others) {
      if (other.takenAt().isBefore(takenAt)) {
        lastBefore = other.takenAt();
      }
    }
    return new RefusedPhoto("other-focal-length", reason(found, expected, setup.number()))
        .onPages(reason(found, expected, setup.numberOnPages()))
        .asking(
            question(takenAt, lastBefore, Instant::toString),
            question(takenAt, lastBefore, time::minute));
  }

  private static String question(
      Instant takenAt, @Nullable Instant lastBefore, Function<Instant, String> words) {
    String then = words.apply(takenAt);
    return "Was the zoom or the lens changed "
        + (lastBefore == null
            ? "before " + then
            : "between " + words.apply(lastBefore) + " and " + then)
        + "? If so, enter a new setup that starts then, with a calibration of its own, and send the"
        + " photograph again. If it was moved by accident, put it back and calibrate.";
  }

  private static String reason(double found, double expected, int setup) {
    return String.format(
        Locale.ROOT,
        "The focal length is %s mm: expected %s mm, as in the other photographs of setup %d. At"
            + " another focal length pixels mean other angles.",
        plain(found),
        plain(expected),
        setup);
  }

  private static String plain(double value) {
    return value == Math.rint(value)
        ? Long.toString((long) value)
        : String.format(Locale.ROOT, "%.1f", value);
  }
}
