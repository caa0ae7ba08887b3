package org.limbspan.dashboard;

import java.util.List;
import java.util.stream.IntStream;
import org.limbspan.cycle.Observation;
import org.limbspan.dashboard.LedgerFacts.Logged;
import org.limbspan.dashboard.LedgerSheet.Line;
import org.limbspan.dashboard.LedgerSheet.Log;
import org.limbspan.scale.Measured;

/** The latest readings, as lines of a log book. */
final class LogTable {

  private LogTable() {}

  static Log of(LedgerFacts facts) {
    List<Logged> latest = facts.latest();
    String caption =
        "The latest "
            + Typeset.whole(latest.size())
            + " of "
            + Typeset.count(facts.observations().size(), "reading")
            + ", with their own standard uncertainties.";
    return new Log(caption, "times of " + facts.time().zone().getId(), lines(latest, facts.time()));
  }

  private static List<Line> lines(List<Logged> latest, RigTime time) {
    List<Observation> rows = latest.stream().map(Logged::observation).toList();
    List<String> observed =
        Aligned.column(
            rows.stream().map(o -> Typeset.pair(arcmin(o, o.observedArcmin()))).toList());
    List<String> computed =
        Aligned.column(rows.stream().map(o -> arcmin(o, o.predictedArcmin()).valueText()).toList());
    List<String> residual =
        Aligned.column(rows.stream().map(o -> Typeset.signedPair(residual(o))).toList());
    return IntStream.range(0, rows.size())
        .mapToObj(
            i ->
                new Line(
                    latest.get(i).id(),
                    rows.get(i).takenAt().toString(),
                    time.minute(rows.get(i).takenAt()),
                    observed.get(i),
                    computed.get(i),
                    residual.get(i),
                    Typeset.places(rows.get(i).sight().apparentAltitudeDeg(), 1),
                    rows.get(i).axis().label(),
                    latest.get(i).note()))
        .toList();
  }

  private static Measured arcmin(Observation o, double value) {
    return new Measured(value, o.relativeUncertainty() * o.observedArcmin());
  }

  private static Measured residual(Observation o) {
    return new Measured(100 * o.residual(), 100 * o.relativeUncertainty());
  }
}
