package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Extremes.Extreme;

/**
 * The ephemeris against tables that give the way of the light, from the Moon at emission to the
 * Earth at reception, in the frame of the solar system's barycentre. Meanwhile the Earth moves 38
 * km, so those distances are up to 41 km off the geometric one that {@link Sky} gives; see its
 * Javadoc.
 */
class LightTimeReferenceTest {

  private static final double LIGHT_KM_PER_DAY = 299792.458 * 86400;

  private final Ephemeris ephemeris = SkyFixture.ephemeris();
  private final Times times = new Times();

  /**
   * NASA Scientific Visualization Studio, Moon Phase and Libration 2024 (SVS 5187), every 6 h of
   * the year: distance in whole kilometres, 0.2 km besides; diameters in tenths of an arcsecond,
   * which depart from the table's own distances by up to 0.073 arcseconds.
   */
  @Test
  void agreesWithTheTableOfTheVisualizationStudioFor2024() {
    List<String[]> rows = Published.rows("moon-2024-every-6h.csv");
    assertThat(rows).hasSize(366 * 4 + 1);
    for (String[] row : rows) {
      double distanceKm = wayOfLightKm(times.tdbDays(Published.minute(row[0])));
      assertThat(distanceKm)
          .as("km, %s", row[0])
          .isCloseTo(Double.parseDouble(row[4]), within(0.7));
      assertThat(Disc.diameterArcmin(distanceKm) * 60)
          .as("arcsec, %s", row[0])
          .isCloseTo(Double.parseDouble(row[3]), within(0.08));
    }
  }

  /**
   * The same for the product's own distance: nowhere more than 41 km or 0.27 arcseconds (0.015 %)
   * away.
   */
  @Test
  void staysNearTheTableWithTheGeometricDistance() {
    for (String[] row : Published.rows("moon-2024-every-6h.csv")) {
      double distanceKm = SkyFixture.sky().geocentricDistanceKm(Published.minute(row[0]));
      assertThat(distanceKm).as(row[0]).isCloseTo(Double.parseDouble(row[4]), within(41.5));
      assertThat(Disc.diameterArcmin(distanceKm) * 60)
          .as("arcsec, %s", row[0])
          .isCloseTo(Double.parseDouble(row[3]), within(0.27));
    }
  }

  /** JPL Horizons, second-hand, apsides of 2022 to the second and the metre. */
  @Test
  void agreesWithHorizonsOnTheApsidesOf2022() {
    List<Extreme> extremes = extremes("2022-01-01T00:00:00Z", 285);
    List<String[]> rows = Published.rows("apsides-2022.csv");
    assertThat(extremes).hasSameSizeAs(rows);
    for (int i = 0; i < rows.size(); i++) {
      Extreme extreme = extremes.get(i);
      String[] row = rows.get(i);
      assertThat(extreme.greatest()).isEqualTo(row[0].equals("apogee"));
      assertThat(Duration.between(times.instant(extreme.atDays()), Instant.parse(row[2])).abs())
          .as(row[2])
          .isLessThan(Duration.ofSeconds(4));
      assertThat(wayOfLightKm(extreme.atDays()))
          .as(row[2])
          .isCloseTo(Double.parseDouble(row[3]), within(0.003));
    }
  }

  /** SVS 5187: parabola through hourly distances in whole kilometres, here within minutes. */
  @Test
  void agreesWithTheVisualizationStudioOnTheApsidesOf2024() {
    List<Extreme> extremes = extremes("2024-01-01T00:00:00Z", 366);
    List<String[]> rows = Published.rows("apsides-2024.csv");
    assertThat(extremes).hasSameSizeAs(rows);
    for (int i = 0; i < rows.size(); i++) {
      Extreme extreme = extremes.get(i);
      String[] row = rows.get(i);
      assertThat(extreme.greatest()).isEqualTo(row[0].equals("apogee"));
      assertThat(Duration.between(times.instant(extreme.atDays()), Published.minute(row[4])).abs())
          .as(row[4])
          .isLessThan(Duration.ofMinutes(4));
      assertThat(wayOfLightKm(extreme.atDays()))
          .as(row[4])
          .isCloseTo(Double.parseDouble(row[5]), within(0.5));
    }
  }

  private List<Extreme> extremes(String from, int days) {
    double start = times.tdbDays(Instant.parse(from));
    return Extremes.of(this::wayOfLightKm, start - 1, start + days, 0.5);
  }

  private double wayOfLightKm(double receivedDays) {
    double km = 0;
    for (int round = 0; round < 4; round++) {
      double emittedDays = receivedDays - km / LIGHT_KM_PER_DAY;
      km =
          ephemeris
              .earthKm(emittedDays)
              .add(ephemeris.moonKm(emittedDays))
              .subtract(ephemeris.earthKm(receivedDays))
              .getNorm();
    }
    return km;
  }
}
