package org.limbspan.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;

/** Gathers what is wrong with a batch, line by line, and names no more than a reader can bear. */
final class Rejections {

  private static final int MOST_NAMED = 1000;

  private final List<Violation> named = new ArrayList<>();
  private int lines;

  void addLine(List<Violation> violations) {
    add(1, violations);
  }

  void addLine(NewReading reading, Violation violation) {
    addLine(List.of(reading.line() == null ? violation : violation.atLine(reading.line())));
  }

  void addAll(IntakeReport report) {
    add(report.refused(), report.rejected());
  }

  void addAll(Rejections others) {
    add(others.lines, others.named);
  }

  private void add(int moreLines, List<Violation> violations) {
    lines += moreLines;
    for (Violation violation : violations) {
      if (named.size() < MOST_NAMED) {
        named.add(violation);
      }
    }
  }

  int lines() {
    return lines;
  }

  /** By line. */
  List<Violation> named() {
    named.sort(
        Comparator.comparing(Violation::line, Comparator.nullsFirst(Comparator.naturalOrder())));
    return List.copyOf(named);
  }

  /** Refuses a batch of {@code received} entries if any was wrong. */
  void requireNone(int received) {
    if (lines == 1 && received == 1) {
      throw InvalidInput.inBody(named());
    }
    if (lines > 0) {
      throw InvalidInput.inBody(sentence(received), named());
    }
  }

  String sentence(int received) {
    String all = lines + " of " + received + " readings cannot be taken; nothing was stored.";
    return named.size() < MOST_NAMED
        ? all
        : all + " The first " + MOST_NAMED + " wrong values are named.";
  }
}
