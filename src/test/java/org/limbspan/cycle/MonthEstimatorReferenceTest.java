package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/**
 * Months between published apsides: perigees and apogees of 2024 by the hourly table of the NASA
 * Scientific Visualization Studio (SVS 5187; reference/published/apsides-2024.csv), instants good
 * to half an hour, distances to a kilometre.
 */
class MonthEstimatorReferenceTest {

  private static final Site SITE = new Site(48.2, 16.4, 180);
  private static final List<Apsis> PUBLISHED =
      List.of(
          new Apsis(Apsis.Kind.APOGEE, Instant.parse("2024-02-25T14:41:00Z"), 406302.7),
          new Apsis(Apsis.Kind.PERIGEE, Instant.parse("2024-03-10T06:58:00Z"), 356894.9),
          new Apsis(Apsis.Kind.APOGEE, Instant.parse("2024-03-23T15:31:00Z"), 406305.9),
          new Apsis(Apsis.Kind.PERIGEE, Instant.parse("2024-04-07T17:44:00Z"), 358841.4),
          new Apsis(Apsis.Kind.APOGEE, Instant.parse("2024-04-20T02:04:00Z"), 405650.0),
          new Apsis(Apsis.Kind.PERIGEE, Instant.parse("2024-05-05T21:55:00Z"), 363145.7));

  @Test
  void swingsAreThoseOfThePublishedDistances() {
    List<MonthSwing> months = MonthEstimator.estimate(daily(1), SITE, PUBLISHED);
    assertThat(months).hasSize(2);
    assertThat(months.get(0).predictedSwingPercent()).isCloseTo(13.845, within(0.001));
    assertThat(months.get(1).predictedSwingPercent()).isCloseTo(13.044, within(0.001));
    for (MonthSwing month : months) {
      assertThat(month.observedSwingPercent().orElseThrow().value())
          .isCloseTo(month.predictedSwingPercent(), within(0.001));
      assertThat(month.verdict()).isEqualTo(Verdict.AGREES);
    }
    // from an hour after the first perigee, daily, for 28 d 10 h 46 min
    assertThat(months.get(0).readingCount()).isEqualTo(29);
  }

  @Test
  void aSwingAFifthTooSmallDeparts() {
    List<MonthSwing> months = MonthEstimator.estimate(daily(0.8), SITE, PUBLISHED);
    assertThat(months).allMatch(month -> month.verdict() == Verdict.DEPARTS);
    assertThat(months.get(0).slope().orElseThrow().value()).isCloseTo(0.8, within(0.001));
  }

  @Test
  void oneWrongReadingIsNoDepartingMonth() {
    List<Observation> readings = new ArrayList<>(daily(1).subList(0, 6));
    Observation wrong = readings.get(2);
    readings.set(2, reading(wrong.sight(), wrong.observedArcmin() * 1.01));
    assertThat(MonthEstimator.estimate(readings, SITE, PUBLISHED))
        .noneMatch(month -> month.verdict() == Verdict.DEPARTS);
  }

  @Test
  void threeReadingsAreTooFew() {
    assertThat(MonthEstimator.estimate(daily(1).subList(0, 3), SITE, PUBLISHED))
        .allMatch(month -> month.verdict() == Verdict.TOO_FEW);
  }

  /** One reading a day without error; monthly changes stretched by {@code swing}. */
  private static List<Observation> daily(double swing) {
    List<Observation> readings = new ArrayList<>();
    Instant first = PUBLISHED.get(1).at();
    for (int day = 0; day < 56; day++) {
      MoonSight sight =
          SkyFixture.sky().moonAt(first.plus(Duration.ofMinutes(1440L * day + 60)), SITE);
      readings.add(reading(sight, 31 * Math.pow(sight.horizontalDiameterArcmin() / 31, swing)));
    }
    return readings;
  }

  private static Observation reading(MoonSight sight, double arcmin) {
    return new Observation(sight.at(), Axis.HORIZONTAL, arcmin, 0.001, sight, 0, Sighted.NONE);
  }
}
