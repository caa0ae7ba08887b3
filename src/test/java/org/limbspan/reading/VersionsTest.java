package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.limbspan.reading.Versions.Decision.ALREADY_HELD;
import static org.limbspan.reading.Versions.Decision.CONFLICT;
import static org.limbspan.reading.Versions.Decision.STORE;
import static org.limbspan.rig.OnConflict.REFUSE;
import static org.limbspan.rig.OnConflict.SUPERSEDE;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.reading.Version.Standing;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;

class VersionsTest {

  private static final Instant AT = Instant.parse("2026-02-01T21:14:00Z");

  private final Versions versions = new Versions();

  @Test
  void storesWhatWasNeverEntered() {
    assertThat(versions.decide(entry(100, REFUSE))).isEqualTo(STORE);
    assertThat(versions.decide(entry(100, SUPERSEDE))).isEqualTo(STORE);
    assertThat(versions.nextNumber()).isEqualTo(1);
    assertThat(versions.standing()).isEmpty();
  }

  @Test
  void holdsTheSameDiameterWhateverWasAddedToIt() {
    hold(100);
    assertThat(versions.decide(noted(100, REFUSE))).isEqualTo(ALREADY_HELD);
    assertThat(versions.decide(entry(100, SUPERSEDE))).isEqualTo(ALREADY_HELD);
    assertThat(versions.decide(noted(100, SUPERSEDE))).as("another note").isEqualTo(STORE);
  }

  @Test
  void findsAnotherDiameterOrUncertaintyInConflict() {
    hold(100);
    assertThat(versions.decide(entry(101, REFUSE))).isEqualTo(CONFLICT);
    assertThat(versions.decide(entry(101, SUPERSEDE))).isEqualTo(STORE);
    NewReading vaguer =
        new NewReading(
            AT,
            Axis.HORIZONTAL,
            new Diameter(100, 2, DiameterUnit.PIXEL),
            List.of(),
            Circumstances.NONE,
            REFUSE,
            null);
    assertThat(versions.decide(vaguer)).isEqualTo(CONFLICT);
  }

  @Test
  void neverBringsBackWhatWasSuperseded() {
    hold(100);
    hold(101);
    assertThat(versions.decide(entry(100, REFUSE))).isEqualTo(ALREADY_HELD);
    assertThat(versions.decide(entry(100, SUPERSEDE))).isEqualTo(STORE);
    assertThat(versions.standing().orElseThrow().diameter().value()).isEqualTo(101);
    assertThat(versions.nextNumber()).isEqualTo(3);
  }

  @Test
  void bringsBackWhatWasTakenBackOnlyIfToldTo() {
    hold(100);
    withdraw(100);
    assertThat(versions.standing()).isEmpty();
    assertThat(versions.decide(entry(100, REFUSE))).isEqualTo(ALREADY_HELD);
    assertThat(versions.decide(entry(100, SUPERSEDE))).isEqualTo(STORE);
    assertThat(versions.decide(entry(101, REFUSE))).as("corrected").isEqualTo(STORE);
  }

  private void hold(double px) {
    versions.add(
        new NumberedReading(entry(px, REFUSE), versions.nextNumber()).asVersion(Instant.EPOCH));
  }

  private void withdraw(double px) {
    Version held =
        new NumberedReading(entry(px, REFUSE), versions.nextNumber()).asVersion(Instant.EPOCH);
    versions.add(new Version(held.reading(), Standing.WITHDRAWN));
  }

  private static NewReading entry(double px, OnConflict conflict) {
    return entry(px, conflict, Circumstances.NONE);
  }

  private static NewReading noted(double px, OnConflict conflict) {
    return entry(
        px, conflict, new Circumstances(null, null, null, null, null, null, "another night"));
  }

  private static NewReading entry(double px, OnConflict conflict, Circumstances circumstances) {
    return new NewReading(
        AT,
        Axis.HORIZONTAL,
        new Diameter(px, 1, DiameterUnit.PIXEL),
        List.of(),
        circumstances,
        conflict,
        null);
  }
}
