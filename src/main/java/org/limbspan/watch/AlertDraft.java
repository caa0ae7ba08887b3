package org.limbspan.watch;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.limbspan.drift.Finding;

/** Makes an alert of a finding, before it is known what there was already. */
final class AlertDraft {

  private AlertDraft() {}

  static Alert of(String slug, ZoneId zone, Finding finding, Instant now) {
    Explanation words = new FindingWords(zone).explain(finding);
    return new Alert(
        id(slug, finding),
        finding.kind().label(),
        AlertState.RAISED.label(),
        finding.setup(),
        finding.onsetAt(),
        finding.onsetFrom(),
        finding.onsetTo(),
        finding.until().orElse(null),
        now,
        null,
        finding.evidenceAt(),
        finding.sizePercent(),
        finding.uncertaintyPercent(),
        finding.probability(),
        words.paragraph(),
        words,
        finding.likelyCauses().stream()
            .map(
                cause ->
                    new AlertCause(
                        cause.cause().label(),
                        cause.probability(),
                        CauseWords.words(cause.cause())))
            .toList(),
        finding.evidence(),
        List.of());
  }

  /** The same ledger gives the same id, on any installation and in any order of entry. */
  private static UUID id(String slug, Finding finding) {
    String name =
        "%s %s %d %s"
            .formatted(slug, finding.kind().label(), finding.setup(), finding.evidenceAt());
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }
}
