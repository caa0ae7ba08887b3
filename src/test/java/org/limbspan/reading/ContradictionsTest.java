package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;

class ContradictionsTest {

  private static final Instant AT = Instant.parse("2026-02-01T21:14:00Z");

  @Test
  void findsTwoDiametersForOneInstantAndAxisInEitherOrder() {
    NewReading one = reading(100, Axis.VERTICAL, OnConflict.REFUSE);
    NewReading other = reading(101, Axis.VERTICAL, OnConflict.REFUSE);
    assertThat(Contradictions.in(List.of(one, other))).containsExactly(one.key());
    assertThat(Contradictions.in(List.of(other, one))).containsExactly(one.key());
  }

  @Test
  void findsNoneInRepetitionsOtherAxesAndEntriesThatSupersede() {
    assertThat(
            Contradictions.in(
                List.of(
                    reading(100, Axis.VERTICAL, OnConflict.REFUSE),
                    reading(100, Axis.VERTICAL, OnConflict.REFUSE),
                    reading(101, Axis.HORIZONTAL, OnConflict.REFUSE),
                    reading(102, Axis.VERTICAL, OnConflict.SUPERSEDE))))
        .isEmpty();
  }

  private static NewReading reading(double px, Axis axis, OnConflict conflict) {
    return new NewReading(
        AT,
        axis,
        new Diameter(px, 1, DiameterUnit.PIXEL),
        List.of(),
        Circumstances.NONE,
        conflict,
        null);
  }
}
