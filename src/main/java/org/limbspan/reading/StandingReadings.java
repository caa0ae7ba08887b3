package org.limbspan.reading;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Setup;
import org.limbspan.sky.Site;

/**
 * What stands of one rig's readings, kept up row by row, oldest first; each beside the computed
 * Moon once that was asked for. Not for several threads at a time.
 */
final class StandingReadings {

  private static final Comparator<RecordedReading> ORDER =
      Comparator.comparing(RecordedReading::takenAt).thenComparing(r -> r.axis().label());

  private final List<RecordedReading> readings;

  /** Beside each reading; null where it was not asked for, empty where it has no angle. */
  private final List<@Nullable Optional<StandardisedReading>> standardised;

  private @Nullable Basis basis;
  private RowCount rows;

  /** All that an angle depends on but the reading. */
  private record Basis(Site site, List<Setup> setups, List<RecordedCalibration> calibrations) {}

  /**
   * @param rows of the rig, whether they stand or not
   * @param standing in their order
   */
  StandingReadings(RowCount rows, List<RecordedReading> standing) {
    this.rows = rows;
    this.readings = new ArrayList<>(standing);
    this.standardised = new ArrayList<>(Collections.nCopies(standing.size(), null));
  }

  RowCount rows() {
    return rows;
  }

  List<RecordedReading> readings() {
    return List.copyOf(readings);
  }

  /** Those with {@code from <= takenAt < to}. */
  List<RecordedReading> between(Instant from, Instant to) {
    return List.copyOf(readings.subList(firstFrom(from), Math.max(firstFrom(from), firstFrom(to))));
  }

  private int firstFrom(Instant instant) {
    int low = 0;
    int high = readings.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (readings.get(middle).takenAt().isBefore(instant)) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /**
   * Takes a row that was added since, in the order of their ids.
   *
   * @return whether it goes on from what is known; if not, all is to be read again
   */
  boolean take(Version row) {
    RecordedReading added = row.reading();
    if (added.id() <= rows.lastId()) {
      return false;
    }
    rows = new RowCount(rows.count() + 1, added.id());
    int at = Collections.binarySearch(readings, added, ORDER);
    if (at >= 0 && readings.get(at).version() >= added.version()) {
      return readings.get(at).id() == added.id(); // was read a moment too early
    }
    if (row.isHeld() && at >= 0) {
      set(at, added);
    } else if (row.isHeld()) {
      add(-at - 1, added);
    } else if (at >= 0) {
      readings.remove(at);
      standardised.remove(at);
    }
    return true;
  }

  private void set(int at, RecordedReading reading) {
    readings.set(at, reading);
    standardised.set(at, null);
  }

  private void add(int at, RecordedReading reading) {
    readings.add(at, reading);
    standardised.add(at, null);
  }

  /** As angles; without those in a setup that has no calibration. */
  List<StandardisedReading> standardised(InstrumentHistory history, Standardiser standardiser) {
    Basis now = new Basis(history.rig().site(), history.setups(), history.calibrations());
    if (!now.equals(basis)) {
      Collections.fill(standardised, null);
      basis = now;
    }
    List<StandardisedReading> all = new ArrayList<>(readings.size());
    for (int i = 0; i < readings.size(); i++) {
      Optional<StandardisedReading> angle = standardised.get(i);
      if (angle == null) {
        angle = standardiser.standardise(readings.get(i));
        standardised.set(i, angle);
      }
      angle.ifPresent(all::add);
    }
    return Collections.unmodifiableList(all);
  }
}
