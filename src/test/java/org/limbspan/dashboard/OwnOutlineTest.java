package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.dashboard.OwnOutline.Corner;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.HorizonLine.Point;
import org.limbspan.sky.MoonSight;

class OwnOutlineTest {

  private static final Instant START = Instant.parse("2026-03-01T20:00:00Z");

  /** 120 5, 120 30, 150 30, 150 5. */
  private static final HorizonLine WALL =
      new HorizonLine(
          List.of(new Point(120, 5), new Point(120, 30), new Point(150, 30), new Point(150, 5)));

  @Test
  void keepsAWallUprightBetweenTwoSights() {
    assertThat(new OwnOutline(WALL).along(track(110, 130, 160)))
        .containsExactly(
            corner(0, 5),
            corner(500, 5),
            corner(500, 30),
            corner(1000, 30),
            corner(1667, 30),
            corner(1667, 5),
            corner(2000, 5));
  }

  /** South of the equator the Moon goes from right to left, and meets the other edge first. */
  @Test
  void goesUpAndDownInTheOrderOfTheMoonsOwnWay() {
    assertThat(new OwnOutline(WALL).along(track(160, 130, 110)))
        .containsExactly(
            corner(0, 5),
            corner(333, 5),
            corner(333, 30),
            corner(1000, 30),
            corner(1500, 30),
            corner(1500, 5),
            corner(2000, 5));
  }

  @Test
  void goesOnOverNorthWhereTheAzimuthBeginsAnew() {
    HorizonLine gate =
        new HorizonLine(
            List.of(new Point(0, 20), new Point(10, 20), new Point(10, 4), new Point(360, 4)));
    assertThat(new OwnOutline(gate).along(track(350, 15)))
        .containsExactly(
            corner(0, 4),
            corner(400, 4),
            corner(400, 20),
            corner(800, 20),
            corner(800, 4),
            corner(1000, 4));
    assertThat(new OwnOutline(gate).along(track(15, 350)))
        .containsExactly(
            corner(0, 4),
            corner(200, 4),
            corner(200, 20),
            corner(600, 20),
            corner(600, 4),
            corner(1000, 4));
  }

  private static Corner corner(long millis, double altitudeDeg) {
    return new Corner(START.plusMillis(millis), altitudeDeg);
  }

  /** A second from one to the next. */
  private static List<MoonSight> track(double... azimuthsDeg) {
    long[] second = {0};
    return Arrays.stream(azimuthsDeg)
        .mapToObj(
            azimuthDeg ->
                new MoonSight(
                    START.plusSeconds(second[0]++),
                    384400,
                    380000,
                    31,
                    30.97,
                    40,
                    40.02,
                    azimuthDeg,
                    0.5,
                    90,
                    -30,
                    0,
                    0))
        .toList();
  }
}
