package org.limbspan.dashboard;

import java.time.Instant;
import java.util.List;
import org.limbspan.demo.Demo;
import org.limbspan.reading.Extent;
import org.limbspan.rig.Rig;
import org.limbspan.watch.Alert;

/** A rig in the table of contents. */
record ContentsLine(String slug, String name, String readings, String words, boolean invented) {

  static ContentsLine of(Rig rig, Extent held, List<Alert> alerts) {
    RigTime time = new RigTime(rig.timeZone());
    Instant firstAt = held.firstAt();
    Instant lastAt = held.lastAt();
    String since = firstAt == null ? ", not begun" : ", since " + time.day(firstAt);
    String latest = lastAt == null ? "" : "; latest reading " + time.day(lastAt);
    return new ContentsLine(
        rig.slug(),
        rig.name(),
        Typeset.count(held.count(), "reading"),
        time.zone().getId() + since + latest + "; " + remarks(alerts) + ".",
        Demo.invented(rig));
  }

  private static String remarks(List<Alert> alerts) {
    long waiting = alerts.stream().map(Alert::state).filter("raised"::equals).count();
    if (waiting > 0) {
      return Typeset.count(waiting, "remark")
          + (waiting == 1 ? " waits" : " wait")
          + " for an answer";
    }
    return alerts.isEmpty() ? "nothing to remark" : "all remarks answered";
  }
}
