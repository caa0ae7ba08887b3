package org.limbspan.watch;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.reading.Readings;
import org.limbspan.reading.RecordedReading;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.springframework.stereotype.Component;

/** Puts readings right as an answer says; each change is a fact of the ledger with its reason. */
@Component
class ReadingRemedies {

  /** Later than any ephemeris. */
  private static final Instant FAR = Instant.parse("2200-01-01T00:00:00Z");

  private final Rigs rigs;
  private final Readings readings;

  ReadingRemedies(Rigs rigs, Readings readings) {
    this.rigs = rigs;
    this.readings = readings;
  }

  /** What was done, in words; empty if nothing was to be done. */
  Optional<String> apply(Rig rig, Alert alert, Instant from, Remedy remedy, String reason) {
    if (remedy instanceof Remedy.Withdraw) {
      List<RecordedReading> concerned = concerned(rig, alert, from);
      concerned.forEach(reading -> readings.withdraw(rig, reading.id(), reason));
      return Optional.of(concerned.size() + " readings were withdrawn.");
    }
    if (remedy instanceof Remedy.Relabel relabel) {
      Axis axis = relabel.axis();
      List<RecordedReading> concerned =
          concerned(rig, alert, from).stream().filter(each -> each.axis() != axis).toList();
      concerned.forEach(reading -> readings.relabel(rig, reading.id(), axis, reason));
      return Optional.of(
          concerned.size() + " readings were entered again as " + axis.label() + ".");
    }
    return Optional.empty();
  }

  private List<RecordedReading> concerned(Rig rig, Alert alert, Instant from) {
    InstrumentHistory history = rigs.history(rig);
    @Nullable Instant until = alert.until();
    return readings.between(rig.id(), from, until == null ? FAR : until).stream()
        .filter(reading -> history.setupAt(reading.takenAt()).number() == alert.setup())
        .toList();
  }
}
