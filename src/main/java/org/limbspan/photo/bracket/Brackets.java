package org.limbspan.photo.bracket;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.limbspan.sky.Axis;

/**
 * Which frames make one reading: those of one setup and axis within ten minutes. A bracket begins
 * with the first frame that belongs to none yet and takes what follows within ten minutes of it, so
 * that a series without a pause is cut into pieces of that length.
 */
public final class Brackets {

  /** A bracket is shorter than this. */
  public static final Duration LENGTH = Duration.ofMinutes(10);

  private Brackets() {}

  private record Kind(int setup, Axis axis) {}

  /** The brackets, each by time. */
  public static List<List<Frame>> of(Collection<Frame> frames) {
    Map<Kind, List<List<Frame>>> kinds = new LinkedHashMap<>();
    frames.stream()
        .sorted(Frame.BY_TIME)
        .forEach(
            frame ->
                add(
                    frame,
                    kinds.computeIfAbsent(
                        new Kind(frame.setup(), frame.axis()), kind -> new ArrayList<>())));
    return kinds.values().stream().flatMap(List::stream).map(List::copyOf).toList();
  }

  private static void add(Frame frame, List<List<Frame>> brackets) {
    if (brackets.isEmpty() || !belongs(frame, brackets.get(brackets.size() - 1))) {
      brackets.add(new ArrayList<>());
    }
    brackets.get(brackets.size() - 1).add(frame);
  }

  private static boolean belongs(Frame frame, List<Frame> bracket) {
    Instant end = bracket.get(0).takenAt().plus(LENGTH);
    return frame.takenAt().isBefore(end);
  }
}
