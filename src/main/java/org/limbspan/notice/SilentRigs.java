package org.limbspan.notice;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.limbspan.reading.Readings;
import org.limbspan.rig.Rig;
import org.springframework.stereotype.Component;

/**
 * That no reading came for as many passes as the recipient chose, once for each silence. A pass
 * counts if it offered a window; what the weather was is not known here. Looked at once an hour.
 */
@Component
class SilentRigs implements Occasion {

  /** Longer than any run of passes without a window and one with. */
  private static final Duration PER_PASS = Duration.ofDays(4);

  private final Readings readings;
  private final ComingWindows windows;
  private final Map<UUID, Looked> looked = new ConcurrentHashMap<>();

  SilentRigs(Readings readings, ComingWindows windows) {
    this.readings = readings;
    this.windows = windows;
  }

  private record Looked(Instant hour, int passes, List<Timely> result) {}

  @Override
  public NoticeKind kind() {
    return NoticeKind.RIG_SILENT;
  }

  @Override
  public List<Timely> of(Rig rig, Recipient recipient, Instant now) {
    Instant hour = now.truncatedTo(ChronoUnit.HOURS);
    int passes = recipient.wishes().silentPasses();
    Looked before = looked.get(recipient.id());
    if (before != null && before.hour().equals(hour) && before.passes() == passes) {
      return before.result();
    }
    List<Timely> result = look(rig, recipient, now);
    looked.put(recipient.id(), new Looked(hour, passes, result));
    return result;
  }

  private List<Timely> look(Rig rig, Recipient recipient, Instant now) {
    int passes = recipient.wishes().silentPasses();
    Optional<Instant> latest = readings.latestTakenAt(rig.id());
    Instant since = latest.filter(recipient.createdAt()::isBefore).orElse(recipient.createdAt());
    Instant farthest = since.plus(PER_PASS.multipliedBy(passes).plusDays(16));
    long missed =
        windows.ends(rig, since, now.isBefore(farthest) ? now : farthest).limit(passes).count();
    return missed < passes
        ? List.of()
        : List.of(new Timely("silence since " + since, () -> letter(rig, passes, latest), null));
  }

  private static Letter letter(Rig rig, int passes, Optional<Instant> latest) {
    String last =
        latest.map(at -> "The latest was taken at " + at + ".").orElse("There is none at all yet.");
    return new Letter(
        OneLine.of(rig.name() + ": no reading for " + passes + " passes"),
        "Rig: "
            + rig.name()
            + "\n\nThe Moon passed through windows to photograph in "
            + passes
            + (passes == 1 ? " time" : " times")
            + ", and no reading came. "
            + last
            + " What the weather was is not known here. If it was clear, look at camera, power and"
            + " the way that readings take.\n",
        "/rigs/" + rig.slug() + "/tonight");
  }
}
