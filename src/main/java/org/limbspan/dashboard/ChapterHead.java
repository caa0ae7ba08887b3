package org.limbspan.dashboard;

import java.util.Arrays;
import java.util.List;

/**
 * The head of a page of one rig.
 *
 * @param stand of the ledger and its judgement, see {@link LiveStand}
 * @param waiting whether the judgement is behind the ledger
 */
record ChapterHead(
    String slug,
    String name,
    String title,
    String timeZone,
    String judged,
    String stand,
    boolean invented,
    boolean waiting,
    List<Way> ways) {

  /** A way to another page of the rig, or to this one. */
  record Way(String href, String title, boolean here, boolean open) {}

  static ChapterHead of(LedgerFacts facts, Chapter here) {
    return new ChapterHead(
        facts.slug(),
        facts.name(),
        here.title(),
        facts.time().zone().getId(),
        "judged "
            + facts.time().minute(facts.judgedAt())
            + (facts.pending() ? "; new entries wait" : "; nothing waits"),
        LiveStand.of(facts.revision(), facts.judgedAt()),
        facts.invented(),
        facts.pending(),
        ways(facts.slug(), here));
  }

  /** From a page of a rig to all of them. */
  static List<Way> ways(String slug, Chapter here) {
    return Arrays.stream(Chapter.values())
        .map(
            each -> new Way("/rigs/" + slug + each.path(), each.title(), each == here, each.open()))
        .toList();
  }
}
