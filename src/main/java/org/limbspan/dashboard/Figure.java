package org.limbspan.dashboard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.limbspan.scale.Measured;
import org.limbspan.sky.Apsis;
import org.limbspan.watch.Alert;

/**
 * What all figures of a rig have in common. Instants are seconds of the epoch, to draw with.
 *
 * @param whole first and last instant of the ledger
 * @param thinned whether points were left out
 * @param coarse whether a narrower window shows more
 */
record Figure(
    List<Double> whole,
    boolean thinned,
    boolean coarse,
    String timeZone,
    List<Mark> marks,
    List<Change> changes) {

  /** Kinds that begin at an instant which a figure can show. */
  private static final Set<String> DATED =
      Set.of("scale-step", "scale-drift", "scatter-growth", "clock-suspect");

  /** An instant on the edge of the frame: perigee, apogee, setup or calibration. */
  record Mark(double t, String kind) {}

  /** A judged change, with the interval within which it began. */
  record Change(int number, double onset, double from, double to, String words) {}

  static Figure of(LedgerFacts facts, List<Apsis> apsides, boolean thinned, boolean coarse) {
    return new Figure(
        List.of(
            epochS(facts.firstAt().orElse(facts.judgedAt())),
            epochS(facts.lastAt().orElse(facts.judgedAt()))),
        thinned,
        coarse,
        facts.time().zone().getId(),
        marks(facts, apsides),
        changes(facts.alerts()));
  }

  static double epochS(Instant at) {
    return at.getEpochSecond() + at.getNano() / 1e9;
  }

  private static List<Mark> marks(LedgerFacts facts, List<Apsis> apsides) {
    List<Mark> marks = new ArrayList<>();
    for (Apsis apsis : apsides) {
      boolean near = apsis.kind() == Apsis.Kind.PERIGEE;
      marks.add(new Mark(epochS(apsis.at()), near ? "perigee" : "apogee"));
    }
    facts.setupsStartedAt().forEach(at -> marks.add(new Mark(epochS(at), "setup")));
    facts.calibratedAt().forEach(at -> marks.add(new Mark(epochS(at), "calibration")));
    return marks;
  }

  private static List<Change> changes(List<Alert> alerts) {
    List<Change> changes = new ArrayList<>();
    for (int i = 0; i < alerts.size(); i++) {
      Alert alert = alerts.get(i);
      if (DATED.contains(alert.kind())) {
        changes.add(
            new Change(
                i + 1,
                epochS(alert.onsetAt()),
                epochS(alert.onsetFrom()),
                epochS(alert.onsetTo()),
                words(alert, i + 1)));
      }
    }
    return changes;
  }

  private static String words(Alert alert, int number) {
    Measured size = new Measured(alert.sizePercent(), alert.uncertaintyPercent());
    if (!alert.state().equals("raised")) {
      return "Remark " + number;
    }
    return switch (alert.kind()) {
      case "scale-step" -> Typeset.signed(size) + " %";
      case "scale-drift" -> Typeset.signed(size) + " % in 30 d";
      default -> "Remark " + number;
    };
  }
}
