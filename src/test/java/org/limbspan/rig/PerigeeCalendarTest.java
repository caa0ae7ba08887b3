package org.limbspan.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Ephemeris;
import org.limbspan.sky.Sky;
import org.springframework.core.io.ClassPathResource;

class PerigeeCalendarTest {

  private static final Sky SKY = skyOfTheClassPath();

  @Test
  void agreesWithTheDirectSearchAnywhereInTheEphemeris() {
    PerigeeCalendar calendar = new PerigeeCalendar(SKY);
    Random random = new Random(20_260_502);
    long span = Duration.between(SKY.ephemerisFrom(), SKY.ephemerisTo()).toSeconds();
    for (int i = 0; i < 300; i++) {
      Instant at = SKY.ephemerisFrom().plusSeconds((long) (random.nextDouble() * span));
      assertThat(calendar.daysFromPerigee(at))
          .as(at.toString())
          .isCloseTo(SKY.daysFromPerigee(at), within(2e-5));
    }
  }

  @Test
  void answersAtBothEndsOfTheEphemeris() {
    PerigeeCalendar calendar = new PerigeeCalendar(SKY);
    for (Instant at : new Instant[] {SKY.ephemerisFrom(), SKY.ephemerisTo().minusSeconds(1)}) {
      assertThat(calendar.daysFromPerigee(at)).isCloseTo(SKY.daysFromPerigee(at), within(2e-5));
    }
  }

  @Test
  void countsBackwardBeforeAPerigee() {
    // Perigee of 2016 November 14, 11:23 UTC, widely published.
    PerigeeCalendar calendar = new PerigeeCalendar(SKY);
    assertThat(calendar.daysFromPerigee(Instant.parse("2016-11-13T11:23:00Z")))
        .isCloseTo(-1, within(0.002));
    assertThat(calendar.daysFromPerigee(Instant.parse("2016-11-15T11:23:00Z")))
        .isCloseTo(1, within(0.002));
  }

  private static Sky skyOfTheClassPath() {
    try {
      byte[] file = new ClassPathResource("ephemeris/lnxp1980p2060.405").getContentAsByteArray();
      return Sky.of(Ephemeris.of(ByteBuffer.wrap(file)));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
