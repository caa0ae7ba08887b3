package org.limbspan.rig;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Range;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.HorizonLine.Point;

/** Reads a horizon, point by point, from what a client sent. */
final class HorizonEntry {

  static final List<Set<String>> REQUIRED_COLUMNS =
      List.of(Set.of("azimuthDeg"), Set.of("altitudeDeg"));

  private static final Set<String> FIELDS =
      new LinkedHashSet<>(List.of("azimuthDeg", "altitudeDeg"));

  private final List<Point> points = new ArrayList<>();
  private final List<Violation> violations = new ArrayList<>();

  void read(Entry entry) {
    entry.refuseBeside(FIELDS);
    OptionalDouble azimuthDeg = entry.number("azimuthDeg", Range.between(0, 360));
    OptionalDouble altitudeDeg = entry.number("altitudeDeg", Range.between(0, 90));
    violations.addAll(entry.violations());
    if (entry.isSound()) {
      points.add(new Point(azimuthDeg.orElseThrow(), altitudeDeg.orElseThrow()));
    }
  }

  /**
   * The line.
   *
   * @throws InvalidInput if anything was wrong with it
   */
  HorizonLine line() {
    if (!violations.isEmpty()) {
      throw InvalidInput.inBody(violations);
    }
    if (points.size() < HorizonLine.FEWEST_POINTS || points.size() > HorizonLine.MOST_POINTS) {
      throw InvalidInput.inBody(
          "points",
          points.size(),
          "%d to %d points around the compass"
              .formatted(HorizonLine.FEWEST_POINTS, HorizonLine.MOST_POINTS));
    }
    return new HorizonLine(points);
  }
}
