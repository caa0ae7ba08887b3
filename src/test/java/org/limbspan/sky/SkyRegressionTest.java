package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.assertj.core.api.RecursiveComparisonAssert;
import org.assertj.core.api.recursive.comparison.RecursiveComparisonConfiguration;
import org.junit.jupiter.api.Test;

/**
 * Figures as this code gave them first, to nine digits: a change that moves one says so. They are
 * not evidence; the reference tests are.
 */
class SkyRegressionTest {

  private final Sky sky = SkyFixture.sky();

  @Test
  void keepsANorthernEvening() {
    same(
        sky.moonAt(Instant.parse("2024-03-25T20:00:00Z"), new Site(48, 11, 500)),
        new MoonSight(
            Instant.parse("2024-03-25T20:00:00Z"),
            404724.98414686264,
            402732.61347736034,
            29.66116756443786,
            29.58578214698819,
            17.71256483293414,
            17.761381883777364,
            119.28845708040767,
            0.9966772829961148,
            173.37313593286473,
            -23.382090252062103,
            -4.223780381227898,
            66.994522944045));
  }

  @Test
  void keepsASouthernNoonInColdAir() {
    Instant at = Instant.parse("2051-08-09T03:04:05.678Z");
    same(
        sky.moonAt(at, new Site(-33.9, 151.2, 40), new Atmosphere(1020, -5)),
        new MoonSight(
            at,
            398938.355554146,
            393919.8406279665,
            30.324751323587044,
            30.318800897728803,
            51.511377308383416,
            51.525698360599556,
            17.37360478177936,
            0.06303958751907807,
            29.010164701723834,
            37.990884970151065,
            2.6857258279416243,
            161.78541857241277));
  }

  @Test
  void keepsAPass() {
    Instant day = Instant.parse("2024-03-25T00:00:00Z");
    Pass pass = sky.passes(day, day.plusSeconds(86400), new Site(48, 11, 500)).get(0);
    assertThat(pass.riseAt()).contains(Instant.parse("2024-03-25T17:57:56.732Z"));
    assertThat(pass.culminationAt()).isEqualTo("2024-03-25T23:45:33.066Z");
    assertThat(pass.setAt()).contains(Instant.parse("2024-03-26T05:29:46.832Z"));
  }

  private static void same(MoonSight computed, MoonSight frozen) {
    RecursiveComparisonConfiguration nineDigits =
        RecursiveComparisonConfiguration.builder()
            .withComparatorForType(
                (a, b) -> Math.abs(a - b) <= 1e-9 * Math.abs(b) ? 0 : Double.compare(a, b),
                Double.class)
            .build();
    RecursiveComparisonAssert<?> comparison =
        assertThat(computed).usingRecursiveComparison(nineDigits);
    comparison.isEqualTo(frozen);
  }
}
