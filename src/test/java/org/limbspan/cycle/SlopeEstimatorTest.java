package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/** When there is a verdict on the swing at all. The readings are invented. */
class SlopeEstimatorTest {

  private static final Site SITE = new Site(48.2, 16.4, 170);
  private static final Instant RISEN = Instant.parse("2024-12-15T17:00:00Z");

  @Test
  void leavesOneNightWithoutVerdictHoweverItsReadingsLie() {
    List<Observation> night =
        List.of(reading(0, 1.0), reading(3, 1.02), reading(6, 1.05), reading(7, 1.06));
    SwingSlope swing = SlopeEstimator.estimate(night, SITE);
    assertThat(swing.verdict()).isEqualTo(Verdict.TOO_FEW);
    assertThat(swing.readingCount()).isEqualTo(4);
  }

  @Test
  void judgesAMonthOfNights() {
    List<Observation> month =
        IntStream.range(0, 28).mapToObj(day -> reading(25L * day, 1 + 0.0002 * (day % 3))).toList();
    assertThat(SlopeEstimator.estimate(month, SITE).verdict()).isEqualTo(Verdict.AGREES);
  }

  private static Observation reading(long hours, double factor) {
    MoonSight sight = SkyFixture.sky().moonAt(RISEN.plus(Duration.ofHours(hours)), SITE);
    return new Observation(
        sight.at(),
        Axis.HORIZONTAL,
        factor * sight.diameterArcmin(Axis.HORIZONTAL),
        0.001,
        sight,
        0,
        Sighted.NONE);
  }
}
