package org.limbspan.notice;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.limbspan.watch.Alert;
import org.limbspan.watch.Explanation;

/** Alerts that nothing stands behind. */
final class InventedAlerts {

  private InventedAlerts() {}

  /** One of many, told apart by their number. */
  static Alert alert(int number) {
    return alert(number, Instant.parse("2026-03-01T20:00:00Z").plusSeconds(86_400L * number));
  }

  static Alert alert(int number, Instant evidenceAt) {
    return new Alert(
        UUID.nameUUIDFromBytes(("invented " + number).getBytes(StandardCharsets.UTF_8)),
        "scale-step",
        "raised",
        0,
        evidenceAt,
        evidenceAt,
        evidenceAt,
        null,
        evidenceAt.plusSeconds(60),
        null,
        evidenceAt,
        0.5,
        0.1,
        0.99,
        "Invented " + number,
        new Explanation(
            "Invented step " + number + ".",
            "By 0.5 percent.",
            "Since then.",
            "Sure.",
            "By these.",
            "The zoom.",
            "Look at the zoom."),
        List.of(),
        List.of(evidenceAt),
        List.of());
  }
}
