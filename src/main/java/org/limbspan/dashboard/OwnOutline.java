package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.MoonSight;

/**
 * The rig's own horizon in the Moon's direction, from sight to sight of its way: the line at each
 * sight, and between them every corner that the Moon passes, so that a wall stays upright.
 */
final class OwnOutline {

  /**
   * @param at when the Moon's azimuth is that of the point
   */
  record Corner(Instant at, double altitudeDeg) {}

  private final HorizonLine line;

  OwnOutline(HorizonLine line) {
    this.line = line;
  }

  /** In order of time; the corners of an upright edge share their instant. */
  List<Corner> along(List<MoonSight> track) {
    List<Corner> outline = new ArrayList<>();
    for (int i = 0; i < track.size(); i++) {
      if (i > 0) {
        outline.addAll(between(track.get(i - 1), track.get(i)));
      }
      MoonSight sight = track.get(i);
      outline.add(new Corner(sight.at(), line.altitudeDeg(sight.azimuthDeg())));
    }
    return outline;
  }

  private List<Corner> between(MoonSight before, MoonSight after) {
    double turnDeg = Math.IEEEremainder(after.azimuthDeg() - before.azimuthDeg(), 360);
    double sense = turnDeg < 0 ? -1 : 1;
    List<HorizonLine.Point> inOrder = new ArrayList<>(line.points());
    if (sense < 0) {
      Collections.reverse(inOrder);
    }
    // Of an edge due north, given at 360 and at 0, the one that is met first.
    inOrder.sort(
        Comparator.comparingDouble((HorizonLine.Point point) -> wayDeg(before, point, sense))
            .thenComparing(point -> -sense * point.azimuthDeg()));
    long millis = Duration.between(before.at(), after.at()).toMillis();
    return inOrder.stream()
        .filter(point -> wayDeg(before, point, sense) > 0)
        .filter(point -> wayDeg(before, point, sense) < Math.abs(turnDeg))
        .map(
            point ->
                new Corner(
                    before
                        .at()
                        .plusMillis(
                            Math.round(millis * wayDeg(before, point, sense) / Math.abs(turnDeg))),
                    point.altitudeDeg()))
        .toList();
  }

  /** From a sight on to a point in the sense in which the Moon moves, 0 to 360. */
  private static double wayDeg(MoonSight from, HorizonLine.Point to, double sense) {
    double way = sense * (to.azimuthDeg() - from.azimuthDeg()) % 360;
    return way < 0 ? way + 360 : way;
  }
}
