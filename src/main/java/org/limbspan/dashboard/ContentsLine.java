package org.limbspan.dashboard;

import org.limbspan.watch.Alert;

/** A rig in the table of contents. */
record ContentsLine(String slug, String name, String readings, String words, boolean invented) {

  static ContentsLine of(LedgerFacts facts) {
    String since =
        facts.firstAt().map(at -> ", since " + facts.time().day(at)).orElse(", not begun");
    String latest = facts.lastAt().map(at -> "; latest reading " + facts.time().day(at)).orElse("");
    return new ContentsLine(
        facts.slug(),
        facts.name(),
        Typeset.count(facts.observations().size() + facts.uncalibrated(), "reading"),
        facts.time().zone().getId() + since + latest + "; " + remarks(facts) + ".",
        facts.invented());
  }

  private static String remarks(LedgerFacts facts) {
    long waiting = facts.alerts().stream().map(Alert::state).filter("raised"::equals).count();
    if (waiting > 0) {
      return Typeset.count(waiting, "remark")
          + (waiting == 1 ? " waits" : " wait")
          + " for an answer";
    }
    return facts.alerts().isEmpty() ? "nothing to remark" : "all remarks answered";
  }
}
