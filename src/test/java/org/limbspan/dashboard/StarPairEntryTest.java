package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.limbspan.rig.NewCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.StarPair;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/** Mizar and Alcor (places of the Hipparcos catalogue, from memory) over an invented garden. */
class StarPairEntryTest {

  private static final Instant NOW = Instant.parse("2024-07-01T12:00:00Z");
  private static final Rig RIG =
      new Rig(
          1,
          "stars",
          "Stars",
          new Site(48, 16, 200),
          ZoneId.of("Europe/Vienna"),
          null,
          Instant.parse("2024-01-01T00:00:00Z"));
  private static final StarForm MIZAR =
      new StarForm("13h 23m 55.54s", "+54\u00b0 55\u2032 31.3\u2033", "119", "-26");
  private static final StarForm ALCOR = new StarForm("13 25 13.54", "54:59:16.7", "", "");

  @Test
  void takesASeparationAsSeenJustAsItIsTyped() {
    NewCalibration entered = entered(typed("0.5", "0.001", "deg", "", ""));
    StarPair pair = (StarPair) entered.calibration().reference();
    assertThat(pair).isEqualTo(new StarPair(30, 0.06));
    assertThat(entered.calibration().measured())
        .isEqualTo(new ImageLength(1500, 0.5, LengthUnit.PIXEL));
    assertThat(entered.takenAt()).isEqualTo(Instant.parse("2024-05-10T20:30:00Z"));
    assertThat(entered.note()).isNull();
  }

  @Test
  void takesTheAirFromASeparationOfACatalogue() {
    NewCalibration entered = entered(typed("1800", "0.6", "arcsec", "20", "90"));
    StarPair pair = (StarPair) entered.calibration().reference();
    // 0.240 percent at 20 degrees in the air of the sea level, 2.4 percent thinner at 200 m; a
    // tenth
    // of it joins the 0.01 that were typed.
    assertThat(pair.separationArcmin()).isCloseTo(30 * (1 - 0.00234), within(0.001));
    assertThat(pair.separationUncertaintyArcmin())
        .isCloseTo(Math.hypot(0.01, 0.0070), within(0.0003));
    assertThat(entered.note()).contains("altitude 20\u00b0", "30.0000\u2032 without air");
  }

  @Test
  void computesTheSeparationFromCoordinatesTimeAndPlace() {
    NewCalibration entered = entered(coordinates("2024-05-10 22:30", MIZAR, ALCOR));
    StarPair pair = (StarPair) entered.calibration().reference();
    // 11.808' without air; near the zenith in May air takes 0.03 percent, aberration 0.01 at most.
    assertThat(pair.separationArcmin()).isCloseTo(11.808 * (1 - 0.0003), within(0.06));
    assertThat(pair.separationArcmin() * 60).isBetween(705.0, 711.0);
    assertThat(pair.separationUncertaintyArcmin()).isCloseTo(0.3 / 60, within(0.0005));
    assertThat(entered.note())
        .startsWith("a clear night. Stars (J2000) 13h 23m 55.54s, ")
        .contains("(119, -26 mas/yr)", "without air", "as seen.");
  }

  @Test
  void complainsOfEachFieldByName() {
    StarForm wrong = new StarForm("noon", "95", "fast", "30000");
    assertThat(read(coordinates("2024-05-10", wrong, StarForm.EMPTY)).complaints())
        .containsOnlyKeys(
            "first.rightAscension",
            "first.declination",
            "first.motionEast",
            "first.motionNorth",
            "second.rightAscension",
            "second.declination",
            "starTakenAt");
    assertThat(read(typed("wide", "", "furlong", "3", "")).complaints())
        .containsOnlyKeys("separation", "separationUncertainty", "pairAltitude", "pairSlope");
    assertThat(read(typed("600", "1", "arcmin", "9", "90")).complaints())
        .containsOnlyKeys("pairAltitude");
  }

  @Test
  void complainsOfAStarBelowTheHorizonAndOfTheSameStarTwice() {
    StarForm southern = new StarForm("6h 45m", "-52 41 44", "", "");
    assertThat(read(coordinates("2024-05-10 22:30", southern, ALCOR)).complaints())
        .hasEntrySatisfying(
            "first.rightAscension", words -> assertThat(words).contains("Expected 5\u00b0"));
    assertThat(read(coordinates("2024-05-10 22:30", ALCOR, ALCOR)).complaints())
        .containsOnlyKeys("second.rightAscension");
  }

  private static NewCalibration entered(StarPairForm form) {
    StarPairEntry.Outcome read = read(form);
    assertThat(read.complaints()).isEmpty();
    return read.calibration().orElseThrow();
  }

  private static StarPairEntry.Outcome read(StarPairForm form) {
    return StarPairEntry.read(form, RIG, SkyFixture.sky(), NOW);
  }

  private static StarPairForm typed(
      String separation, String uncertainty, String unit, String altitude, String slope) {
    return new StarPairForm(
        "2024-05-10 22:30",
        "typed",
        separation,
        uncertainty,
        unit,
        altitude,
        slope,
        null,
        null,
        "",
        "1500",
        "0.5",
        "px",
        "");
  }

  private static StarPairForm coordinates(String takenAt, StarForm first, StarForm second) {
    return new StarPairForm(
        takenAt,
        "coordinates",
        "",
        "",
        "arcmin",
        "",
        "",
        first,
        second,
        "0.3",
        "1500",
        "0.5",
        "px",
        "a clear night");
  }
}
