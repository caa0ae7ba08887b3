package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.RecordedHorizon;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.HorizonLine.Point;

/**
 * The form of the rig's own horizon, as it was filled in.
 *
 * @param horizon lines of azimuth and altitude in degrees
 */
record HorizonForm(@Nullable String horizon) {

  private static final int MOST_COMPLAINTS = 5;

  /** The form with what stands. */
  static HorizonForm of(Optional<RecordedHorizon> standing) {
    return new HorizonForm(
        standing.map(RecordedHorizon::line).map(HorizonLine::points).orElse(List.of()).stream()
            .map(point -> plain(point.azimuthDeg()) + " " + plain(point.altitudeDeg()))
            .collect(Collectors.joining(System.lineSeparator())));
  }

  /** What stands, in words. */
  static String words(Optional<RecordedHorizon> standing) {
    return standing.map(held -> words(held.line())).orElse("No line is entered: the sea horizon.");
  }

  private static String words(HorizonLine line) {
    Point highest =
        line.points().stream().max(Comparator.comparingDouble(Point::altitudeDeg)).orElseThrow();
    return String.format(
        Locale.ROOT,
        "%s; the highest stands %s\u00b0 in the %s, at azimuth %s\u00b0.",
        Typeset.count(line.points().size(), "point"),
        plain(highest.altitudeDeg()),
        TonightWords.direction(highest.azimuthDeg()),
        plain(highest.azimuthDeg()));
  }

  private static String plain(double value) {
    String digits = Double.toString(value);
    return digits.endsWith(".0") ? digits.substring(0, digits.length() - 2) : digits;
  }

  /** What is wrong with it, by the name of the field; empty if nothing is. */
  Map<String, String> complaints() {
    List<String> complaints = new ArrayList<>();
    List<Point> points = points(complaints);
    if (complaints.isEmpty()
        && (points.size() < HorizonLine.FEWEST_POINTS || points.size() > HorizonLine.MOST_POINTS)) {
      complaints.add(
          "Points are %d; expected %d to %d around the compass."
              .formatted(points.size(), HorizonLine.FEWEST_POINTS, HorizonLine.MOST_POINTS));
    }
    if (complaints.isEmpty()) {
      return Map.of();
    }
    String first = complaints.stream().limit(MOST_COMPLAINTS).collect(Collectors.joining(" "));
    int more = complaints.size() - MOST_COMPLAINTS;
    return Map.of("horizon", more > 0 ? first + " And " + more + " more." : first);
  }

  /** The line of a form without complaints. */
  HorizonLine line() {
    return new HorizonLine(points(new ArrayList<>()));
  }

  private List<Point> points(List<String> complaints) {
    List<Point> points = new ArrayList<>();
    List<String> lines = text(horizon).lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).replace("\u00b0", "").replace(';', ' ').strip();
      if (!line.isEmpty()) {
        point(i + 1, List.of(line.split("\\s+", -1)), complaints).ifPresent(points::add);
      }
    }
    return points;
  }

  private static Optional<Point> point(int number, List<String> parts, List<String> complaints) {
    if (parts.size() != 2) {
      complaints.add(
          "Line %d is \u2018%s\u2019; expected azimuth and altitude, a space between."
              .formatted(number, cut(String.join(" ", parts))));
      return Optional.empty();
    }
    OptionalDouble azimuthDeg = degrees(number, "azimuth", parts.get(0), 360, complaints);
    OptionalDouble altitudeDeg = degrees(number, "altitude", parts.get(1), 90, complaints);
    return azimuthDeg.isPresent() && altitudeDeg.isPresent()
        ? Optional.of(new Point(azimuthDeg.getAsDouble(), altitudeDeg.getAsDouble()))
        : Optional.empty();
  }

  private static OptionalDouble degrees(
      int number, String name, String typed, int most, List<String> complaints) {
    OptionalDouble value = TypedNumber.of(typed);
    if (value.isPresent() && value.getAsDouble() >= 0 && value.getAsDouble() <= most) {
      return value;
    }
    complaints.add(
        "Line %d: %s is \u2018%s\u2019; expected 0 to %d degrees."
            .formatted(number, name, cut(typed), most));
    return OptionalDouble.empty();
  }

  private static String cut(String typed) {
    return typed.length() > 40 ? typed.substring(0, 40) + "\u2026" : typed;
  }
}
