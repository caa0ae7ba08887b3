package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.sky.HorizonLine.Point;
import org.limbspan.sky.HorizonLine.View;
import org.limbspan.sky.ShootingPlan.Reason;
import org.limbspan.sky.ShootingPlan.Withheld;
import org.limbspan.sky.ShootingWindow.Place;

/** The site's own horizon, and what it does to rise, set and windows. All lines are invented. */
class HorizonLineTest {

  private static final Site VIENNA = new Site(48.2, 16.4, 170);
  private static final Sky SKY = SkyFixture.sky();

  @ParameterizedTest
  @CsvSource({
    "90, 10", "135, 15", "180, 20", "225, 15", "270, 10", "350, 10", "0, 10", "360, 10", "45, 10"
  })
  void joinsItsPointsByStraightLines(double azimuthDeg, double altitudeDeg) {
    HorizonLine line = line(270, 10, 90, 10, 180, 20);
    assertThat(line.altitudeDeg(azimuthDeg)).isCloseTo(altitudeDeg, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"340, 4", "350, 5", "0, 6", "360, 6", "10, 7", "20, 8", "180, 6"})
  void closesAtNorth(double azimuthDeg, double altitudeDeg) {
    HorizonLine line = line(340, 4, 20, 8);
    assertThat(line.altitudeDeg(azimuthDeg)).isCloseTo(altitudeDeg, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"119.9, 5", "120, 30", "135, 30", "150, 30", "150.1, 5"})
  void takesTwoPointsOfOneAzimuthForAnUprightEdge(double azimuthDeg, double altitudeDeg) {
    HorizonLine line = line(120, 5, 120, 30, 150, 30, 150, 5);
    assertThat(line.altitudeDeg(azimuthDeg)).isCloseTo(altitudeDeg, within(1e-9));
  }

  @Test
  void takesBothWordsForNorth() {
    HorizonLine line = line(0, 3, 90, 9, 360, 12);
    assertThat(line.altitudeDeg(0)).isEqualTo(12);
    assertThat(line.altitudeDeg(45)).isCloseTo(6, within(1e-12));
    assertThat(line.altitudeDeg(225)).isCloseTo(10.5, within(1e-12));
  }

  @Test
  void staysWithinItsPointsAllAroundTheCompass() {
    HorizonLine line = line(10, 3, 77, 31, 200, 8, 310, 12);
    IntStream.rangeClosed(0, 720)
        .forEach(half -> assertThat(line.altitudeDeg(half / 2.0)).isBetween(3.0, 31.0));
  }

  @Test
  void refusesWhatIsNoLine() {
    assertThatIllegalArgumentException().isThrownBy(() -> line(10, 3));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new HorizonLine(Collections.nCopies(721, new Point(1, 1))));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Point(361, 3))
        .withMessageContaining("azimuthDeg 361.0");
    assertThatIllegalArgumentException().isThrownBy(() -> new Point(-1, 3));
    assertThatIllegalArgumentException().isThrownBy(() -> new Point(Double.NaN, 3));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Point(10, -0.1))
        .withMessageContaining("altitudeDeg");
    assertThatIllegalArgumentException().isThrownBy(() -> line(10, 3, 20, 4).altitudeDeg(400));
  }

  @Test
  void tellsClearFromPartlyAndWhollyHiddenByTheDisc() {
    MoonSight sight = SKY.moonAt(at("2024-12-15T18:00:00Z"), VIENNA);
    double radiusDeg = sight.verticalDiameterArcmin() / 120;
    double centreDeg = sight.apparentAltitudeDeg();
    assertThat(level(centreDeg - radiusDeg - 0.001).of(sight)).isEqualTo(View.CLEAR);
    assertThat(level(centreDeg - radiusDeg + 0.001).of(sight)).isEqualTo(View.PARTLY_HIDDEN);
    assertThat(level(centreDeg + radiusDeg - 0.001).of(sight)).isEqualTo(View.PARTLY_HIDDEN);
    assertThat(level(centreDeg + radiusDeg + 0.001).of(sight)).isEqualTo(View.HIDDEN);
  }

  @Test
  void risesAndSetsWhereTheUpperLimbCrossesTheLine() {
    HorizonLine line = line(0, 12, 180, 20);
    for (Pass pass : passes()) {
      PassOverLine seen = LineCrossings.of(SKY, VIENNA, line).over(pass).orElseThrow();
      for (MoonSight edge : List.of(seen.rise().orElseThrow(), seen.set().orElseThrow())) {
        double limbDeg = edge.apparentAltitudeDeg() + edge.verticalDiameterArcmin() / 120;
        // A second of time is at most 15 arcseconds of altitude, 0.0042 degrees.
        assertThat(limbDeg).isCloseTo(line.altitudeDeg(edge.azimuthDeg()), within(0.005));
      }
      assertThat(seen.rise().orElseThrow().at()).isAfter(pass.riseAt().orElseThrow());
      assertThat(seen.set().orElseThrow().at()).isBefore(pass.setAt().orElseThrow());
    }
  }

  @Test
  void keepsTheTrueRiseAndSetOverTheSeaHorizon() {
    for (Pass pass : passes()) {
      PassOverLine seen = LineCrossings.of(SKY, VIENNA, level(0)).over(pass).orElseThrow();
      // The rise of almanacs takes 34 arcminutes of refraction, the sight that of the mean air.
      assertThat(
              Duration.between(pass.riseAt().orElseThrow(), seen.rise().orElseThrow().at()).abs())
          .isLessThan(Duration.ofMinutes(2));
      assertThat(Duration.between(pass.setAt().orElseThrow(), seen.set().orElseThrow().at()).abs())
          .isLessThan(Duration.ofMinutes(2));
    }
  }

  @Test
  void findsNoRiseOverALineThatIsTooHigh() {
    assertThat(LineCrossings.of(SKY, VIENNA, level(80)).over(passes().get(0))).isEmpty();
  }

  @Test
  void keepsWindowsOverTheLine() {
    HorizonLine line = level(11);
    for (Pass pass : passes()) {
      ShootingPlan open = ShootingWindows.of(SKY, VIENNA).plan(pass);
      ShootingPlan plan = ShootingWindows.of(SKY, VIENNA, Optional.of(line)).plan(pass);
      for (ShootingWindow window : plan.windows()) {
        assertThat(line.isClear(SKY.moonAt(window.from(), VIENNA))).isTrue();
        assertThat(line.isClear(SKY.moonAt(window.to().minusSeconds(1), VIENNA))).isTrue();
        if (window.place().isLow()) {
          assertThat(SKY.moonAt(window.from(), VIENNA).apparentAltitudeDeg()).isBetween(11.2, 15.1);
          assertThat(plan.withheld())
              .contains(new Withheld(window.place(), Reason.CUT_FOR_THE_LINE));
        } else {
          assertThat(open.high()).contains(window);
        }
      }
      assertThat(plan.windows()).hasSameSizeAs(open.windows());
    }
  }

  @Test
  void withholdsALowWindowBehindAWallAndChoosesTheOther() {
    Pass pass = passes().get(0);
    HorizonLine wall = line(30, 0, 30, 40, 110, 40, 110, 0);
    ShootingPlan plan = ShootingWindows.of(SKY, VIENNA, Optional.of(wall)).plan(pass);
    assertThat(plan.withheld())
        .containsExactly(new Withheld(Place.LOW_RISING, Reason.BEHIND_THE_LINE));
    assertThat(plan.low().orElseThrow().place()).isEqualTo(Place.LOW_SETTING);
    assertThat(plan.high()).isPresent();
  }

  private static List<Pass> passes() {
    return SKY.passes(at("2024-12-13T12:00:00Z"), at("2024-12-18T12:00:00Z"), VIENNA);
  }

  private static HorizonLine level(double altitudeDeg) {
    return line(0, altitudeDeg, 180, altitudeDeg);
  }

  private static HorizonLine line(double... azimuthsAndAltitudesDeg) {
    return new HorizonLine(
        IntStream.range(0, azimuthsAndAltitudesDeg.length / 2)
            .mapToObj(
                i -> new Point(azimuthsAndAltitudesDeg[2 * i], azimuthsAndAltitudesDeg[2 * i + 1]))
            .toList());
  }

  private static Instant at(String text) {
    return Instant.parse(text);
  }
}
