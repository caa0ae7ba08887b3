package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Site;

class CorrectionTest {

  private static final Site MADRID = new Site(40.4, -3.7, 660);
  private final List<Correction> all = Correction.of(MADRID, ZoneId.of("Europe/Madrid"));

  private Correction named(String name) {
    return all.stream().filter(each -> each.name().equals(name)).findFirst().orElseThrow();
  }

  /** Central European Summer Time begins on 31 March 2024 at 01:00 UTC. */
  @Test
  void knowsSummerTime() {
    Correction local = named("local time");
    assertThat(local.trueInstant().apply(Instant.parse("2024-03-30T23:00:00Z")))
        .isEqualTo(Instant.parse("2024-03-30T22:00:00Z"));
    assertThat(local.trueInstant().apply(Instant.parse("2024-03-31T23:00:00Z")))
        .isEqualTo(Instant.parse("2024-03-31T21:00:00Z"));
  }

  @Test
  void putsAClockBack() {
    assertThat(named("PT12H").trueInstant().apply(Instant.parse("2024-03-30T23:00:00Z")))
        .isEqualTo(Instant.parse("2024-03-30T11:00:00Z"));
  }

  @Test
  void turnsTheSignOfTheLongitude() {
    assertThat(named("longitude").site().longitudeDeg()).isEqualTo(3.7);
  }

  @Test
  void sharesOutNoMoreThanAll() {
    assertThat(all.stream().mapToDouble(Correction::share).sum()).isBetween(0.7, 1.0);
    assertThat(all).extracting(Correction::name).doesNotHaveDuplicates();
  }
}
