package org.limbspan.reading;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.Violation;

/** Sorts the entries of a batch, part by part, by what the ledger holds: new, held, in conflict. */
final class ReadingBatch {

  private final SetupUnits units;
  private final Set<ReadingKey> contradictions;
  private final Rejections refused = new Rejections();
  private final Rejections conflicts = new Rejections();
  private int received;
  private int stored;
  private int alreadyHeld;

  ReadingBatch(SetupUnits units, Set<ReadingKey> contradictions) {
    this.units = units;
    this.contradictions = contradictions;
  }

  /**
   * The readings of a part that are to be stored.
   *
   * @param held what the ledger holds under their keys
   */
  List<NumberedReading> sort(List<NewReading> part, Map<ReadingKey, Versions> held) {
    List<NumberedReading> toStore = new ArrayList<>();
    for (NewReading reading : part) {
      received++;
      Versions versions = held.computeIfAbsent(reading.key(), key -> new Versions());
      if (isToStore(reading, versions)) {
        NumberedReading numbered = new NumberedReading(reading, versions.nextNumber());
        versions.add(numbered.asVersion(Instant.EPOCH));
        toStore.add(numbered);
      }
    }
    stored += toStore.size();
    return toStore;
  }

  /** Whether every entry so far can be taken. */
  boolean isSound() {
    return refused.lines() == 0 && conflicts.lines() == 0;
  }

  /** Refuses the batch unless every entry can be taken. */
  void requireSound() {
    refused.requireNone(received);
    if (conflicts.lines() > 0) {
      throw new Conflict(
          "Another diameter is held for the same instant and axis, "
              + conflicts.lines()
              + (conflicts.lines() == 1 ? " time" : " times")
              + "; nothing was stored.",
          conflicts.named());
    }
  }

  IntakeReport report() {
    Rejections all = new Rejections();
    all.addAll(refused);
    all.addAll(conflicts);
    return new IntakeReport(received, stored, alreadyHeld, all.lines(), all.named());
  }

  private boolean isToStore(NewReading reading, Versions versions) {
    Optional<Violation> wrongUnit = units.violation(reading);
    if (wrongUnit.isPresent()) {
      refused.addLine(reading, wrongUnit.get());
      return false;
    }
    Versions.Decision decision = versions.decide(reading);
    if (decision == Versions.Decision.ALREADY_HELD) {
      alreadyHeld++;
      return false;
    }
    if (contradictions.contains(reading.key())) {
      refused.addLine(
          reading,
          violation(reading, "one diameter for that instant and axis; the batch has several"));
      return false;
    }
    if (decision == Versions.Decision.CONFLICT) {
      conflicts.addLine(reading, violation(reading, heldInstead(versions)));
      return false;
    }
    return true;
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
