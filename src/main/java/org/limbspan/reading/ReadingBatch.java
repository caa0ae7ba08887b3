package org.limbspan.reading;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.limbspan.platform.Violation;
import org.limbspan.rig.OnConflict;

/** Sorts the entries of a batch by what the ledger holds: new, held, in conflict. */
final class ReadingBatch {

  private final Map<ReadingKey, Versions> held;
  private final SetupUnits units;
  private final Set<ReadingKey> contradictory = new HashSet<>();
  private final List<NumberedReading> toStore = new ArrayList<>();
  private final Rejections refused = new Rejections();
  private final Rejections conflicts = new Rejections();
  private int alreadyHeld;

  ReadingBatch(Map<ReadingKey, Versions> held, SetupUnits units) {
    this.held = held;
    this.units = units;
  }

  void sort(List<NewReading> readings) {
    units.settleBy(readings);
    findContradictions(readings);
    readings.forEach(this::sort);
  }

  List<NumberedReading> toStore() {
    return toStore;
  }

  int alreadyHeld() {
    return alreadyHeld;
  }

  Rejections refused() {
    return refused;
  }

  Rejections conflicts() {
    return conflicts;
  }

  private void sort(NewReading reading) {
    Optional<Violation> wrongUnit = units.violation(reading);
    if (wrongUnit.isPresent()) {
      refused.addLine(reading, wrongUnit.get());
      return;
    }
    Versions versions = held.computeIfAbsent(reading.key(), key -> new Versions());
    Versions.Decision decision = versions.decide(reading);
    if (decision == Versions.Decision.ALREADY_HELD) {
      alreadyHeld++;
    } else if (contradictory.contains(reading.key())) {
      refused.addLine(
          reading,
          violation(reading, "one diameter for that instant and axis; the batch has several"));
    } else if (decision == Versions.Decision.CONFLICT) {
      conflicts.addLine(reading, violation(reading, heldInstead(versions)));
    } else {
      store(reading, versions);
    }
  }

  private void store(NewReading reading, Versions versions) {
    NumberedReading numbered = new NumberedReading(reading, versions.nextNumber());
    versions.add(numbered.asVersion(Instant.EPOCH));
    toStore.add(numbered);
  }

  /** Entries that neither agree nor say which is to count; which came first must not matter. */
  private void findContradictions(List<NewReading> readings) {
    Map<ReadingKey, Diameter> first = new HashMap<>();
    for (NewReading reading : readings) {
      if (reading.conflict() == OnConflict.REFUSE) {
        Diameter other = first.putIfAbsent(reading.key(), reading.diameter());
        if (other != null && !other.equals(reading.diameter())) {
          contradictory.add(reading.key());
        }
      }
    }
  }

  private static String heldInstead(Versions versions) {
    Diameter standing = versions.standing().orElseThrow().diameter();
    return "the diameter and uncertainty held for that instant and axis, %s and %s %s, or supersedes"
        .formatted(standing.value(), standing.uncertainty(), standing.unit().symbol());
  }

  private static Violation violation(NewReading reading, String expected) {
    return new Violation(
        "diameter" + reading.diameter().unit().suffix(), reading.diameter().value(), expected);
  }
}
