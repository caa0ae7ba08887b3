package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;

/** Seeded invariants of entries that are sent again. */
class VersionsPropertyTest {

  private final Random random = new Random(20_260_502);

  @Test
  void sendingAnythingOldAgainChangesNothing() {
    for (int run = 0; run < 500; run++) {
      Versions versions = new Versions();
      List<NewReading> sent = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        NewReading entry = entry(OnConflict.SUPERSEDE);
        send(versions, entry);
        sent.add(again(entry));
      }
      double standing = standing(versions);
      Collections.shuffle(sent, random);
      sent.forEach(entry -> assertThat(send(versions, entry)).isFalse());
      assertThat(standing(versions)).isEqualTo(standing);
    }
  }

  @Test
  void sendingTheLastAgainChangesNothingEvenIfItSupersedes() {
    for (int run = 0; run < 500; run++) {
      Versions versions = new Versions();
      NewReading last = entry(OnConflict.SUPERSEDE);
      for (int i = 0; i < 4; i++) {
        last = entry(OnConflict.SUPERSEDE);
        send(versions, last);
      }
      assertThat(send(versions, last)).isFalse();
    }
  }

  private static boolean send(Versions versions, NewReading entry) {
    if (versions.decide(entry) != Versions.Decision.STORE) {
      return false;
    }
    versions.add(new NumberedReading(entry, versions.nextNumber()).asVersion(Instant.EPOCH));
    return true;
  }

  private static double standing(Versions versions) {
    return versions.standing().orElseThrow().diameter().value();
  }

  private static NewReading again(NewReading entry) {
    return new NewReading(
        entry.takenAt(),
        entry.axis(),
        entry.diameter(),
        entry.frames(),
        entry.circumstances(),
        OnConflict.REFUSE,
        null);
  }

  private NewReading entry(OnConflict conflict) {
    return new NewReading(
        Instant.EPOCH,
        Axis.HORIZONTAL,
        new Diameter(100 + random.nextInt(3), 1, DiameterUnit.PIXEL),
        List.of(),
        Circumstances.NONE,
        conflict,
        null);
  }
}
