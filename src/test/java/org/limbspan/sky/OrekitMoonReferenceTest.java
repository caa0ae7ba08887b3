package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Our reading of the ephemeris file against that of Orekit 13.1. */
class OrekitMoonReferenceTest {

  @Test
  void agreesOnTheDistanceFromTheEarthsCentreToAMetre() {
    OrekitMoon other = new OrekitMoon();
    Times times = new Times();
    for (Instant at = Instant.parse("2024-01-01T00:00:00Z");
        at.isBefore(Instant.parse("2024-03-01T00:00:00Z"));
        at = at.plus(Duration.ofHours(7))) {
      double oursKm = SkyFixture.ephemeris().moonKm(times.tdbDays(at)).getNorm();
      double theirsKm = other.fromEarthM(other.date(at)).getNorm() / 1000;
      assertThat(oursKm).as("%s", at).isCloseTo(theirsKm, within(0.001));
    }
  }
}
