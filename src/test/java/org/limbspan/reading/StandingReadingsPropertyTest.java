package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.sky.Axis;

/** Row by row it comes to what the latest versions of all rows say. */
class StandingReadingsPropertyTest {

  private static final Instant FIRST = Instant.parse("2026-03-01T20:00:00Z");

  private static final List<Axis> AXES = List.of(Axis.values());

  private final List<Version> rows = new ArrayList<>();
  private long id = 100;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void keepsUpWithEntriesCorrectionsAndWithdrawals(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 20; i++) {
      add(random);
    }
    StandingReadings kept = new StandingReadings(new RowCount(rows.size(), id), standing());
    for (int step = 0; step < 300; step++) {
      assertThat(kept.take(add(random))).isTrue();
      assertThat(kept.readings()).isEqualTo(standing());
      assertThat(kept.rows()).isEqualTo(new RowCount(rows.size(), id));
    }
    Instant from = FIRST.plus(Duration.ofHours(7));
    Instant to = FIRST.plus(Duration.ofHours(20));
    assertThat(kept.between(from, to))
        .isNotEmpty()
        .isEqualTo(
            standing().stream()
                .filter(r -> !r.takenAt().isBefore(from) && r.takenAt().isBefore(to))
                .toList());
    assertThat(kept.between(to, from)).isEmpty();
  }

  @Test
  void doesNotGoOnFromRowsThatItDoesNotFollow() {
    Random random = new Random(6);
    Version first = add(random);
    StandingReadings kept = new StandingReadings(new RowCount(1, id), standing());
    assertThat(kept.take(first)).isFalse();
    RecordedReading known = kept.readings().get(0);
    Version older = new Version(copy(known, ++id, known.version()), Version.Standing.HELD);
    assertThat(kept.take(older)).isFalse();
  }

  /** Read with the rows and then once more, having come in between. */
  @Test
  void takesARowThatItHoldsAlready() {
    Random random = new Random(7);
    add(random);
    RowCount before = new RowCount(rows.size(), id);
    Version next = new Version(reading(++id, 40, Axis.VERTICAL, 1, 30.5), Version.Standing.HELD);
    rows.add(next);
    StandingReadings kept = new StandingReadings(before, standing());
    assertThat(kept.take(next)).isTrue();
    assertThat(kept.readings()).isEqualTo(standing());
    assertThat(kept.rows()).isEqualTo(new RowCount(rows.size(), id));
  }

  private Version add(Random random) {
    int hour = random.nextInt(30);
    Axis axis = AXES.get(random.nextInt(AXES.size()));
    Instant at = FIRST.plus(Duration.ofHours(hour));
    List<Version> before =
        rows.stream()
            .filter(row -> row.reading().takenAt().equals(at) && row.reading().axis() == axis)
            .toList();
    boolean stands = !before.isEmpty() && before.get(before.size() - 1).isHeld();
    RecordedReading next = reading(++id, hour, axis, before.size() + 1, 30 + random.nextDouble());
    Version row =
        new Version(
            next,
            stands && random.nextInt(3) == 0 ? Version.Standing.WITHDRAWN : Version.Standing.HELD);
    rows.add(row);
    return row;
  }

  private List<RecordedReading> standing() {
    TreeMap<String, Version> latest = new TreeMap<>();
    for (Version row : rows) {
      latest.put(row.reading().takenAt() + row.reading().axis().label(), row);
    }
    return latest.values().stream()
        .filter(Version::isHeld)
        .map(Version::reading)
        .sorted(
            Comparator.comparing(RecordedReading::takenAt)
                .thenComparing(reading -> reading.axis().label()))
        .toList();
  }

  private static RecordedReading reading(long id, int hour, Axis axis, int version, double arcmin) {
    return new RecordedReading(
        id,
        FIRST.plus(Duration.ofHours(hour)),
        axis,
        version,
        new Diameter(arcmin, 0.03, DiameterUnit.ARCMINUTE),
        List.of(),
        Circumstances.NONE,
        FIRST);
  }

  private static RecordedReading copy(RecordedReading from, long id, int version) {
    return new RecordedReading(
        id,
        from.takenAt(),
        from.axis(),
        version,
        from.diameter(),
        from.frames(),
        from.circumstances(),
        from.enteredAt());
  }
}
