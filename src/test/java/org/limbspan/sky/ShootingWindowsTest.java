package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.ShootingPlan.Reason;
import org.limbspan.sky.ShootingPlan.Withheld;
import org.limbspan.sky.ShootingWindow.Place;

class ShootingWindowsTest {

  private static final Site VIENNA = new Site(48.2, 16.4, 170);
  private static final Site TROMSO = new Site(69.65, 18.96, 10);
  private static final Sky SKY = SkyFixture.sky();

  @Test
  void offersLowAndHighWindowsOfAWinterFullMoon() {
    ShootingPlan plan = onlyPlan("2024-12-15T12:00:00Z", "2024-12-16T12:00:00Z", VIENNA);
    ShootingWindow low = plan.low().orElseThrow();
    ShootingWindow high = plan.high().orElseThrow();
    assertThat(low.place()).isEqualTo(Place.LOW_RISING);
    assertThat(low.best().apparentAltitudeDeg()).isCloseTo(10, within(0.003));
    assertThat(altitude(low.from())).isCloseTo(8, within(0.004));
    assertThat(altitude(low.to())).isCloseTo(15, within(0.004));
    assertThat(high.best()).isEqualTo(plan.pass().culmination());
    assertThat(plan.withheld()).isEmpty();
  }

  @Test
  void expectsTheRatioOfTheParallaxLaw() {
    ShootingPlan plan = onlyPlan("2024-12-15T12:00:00Z", "2024-12-16T12:00:00Z", VIENNA);
    MoonSight low = plan.low().orElseThrow().best();
    MoonSight high = plan.high().orElseThrow().best();
    assertThat(plan.ratio().orElseThrow())
        .isCloseTo(low.topocentricDistanceKm() / high.topocentricDistanceKm(), within(2e-5))
        .isBetween(1.009, 1.016);
  }

  @Test
  void holdsEveryInstantOfALowWindowWithinItsAltitudes() {
    for (ShootingPlan plan : plans("2025-03-01T00:00:00Z", "2025-03-29T00:00:00Z", VIENNA)) {
      for (ShootingWindow window : plan.windows()) {
        Duration third = Duration.between(window.from(), window.to()).dividedBy(3);
        for (int i = 0; i < 3; i++) {
          MoonSight sight = SKY.moonAt(window.from().plus(third.multipliedBy(i)), VIENNA);
          assertThat(ShootingWindows.isSunTooNear(sight)).isFalse();
          if (window.place().isLow()) {
            assertThat(sight.apparentAltitudeDeg()).isBetween(8.0, 15.0);
          } else {
            assertThat(sight.horizontalDiameterArcmin())
                .isCloseTo(window.best().horizontalDiameterArcmin(), within(0.0012 * 34));
          }
        }
      }
    }
  }

  @Test
  void withholdsEverythingThatWouldPointNearTheSun() {
    // The Sun was eclipsed on 2024-04-08 about 18:20 UTC: the Moon stands beside it all day.
    ShootingPlan plan = onlyPlan("2024-04-08T06:00:00Z", "2024-04-09T06:00:00Z", VIENNA);
    assertThat(plan.high()).isEmpty();
    assertThat(plan.withheld())
        .contains(
            new Withheld(Place.HIGH, Reason.SUN_TOO_NEAR),
            new Withheld(Place.LOW_RISING, Reason.SUN_TOO_NEAR));
    assertThat(plan.ratio()).isEmpty();
  }

  @Test
  void withholdsANewMoonEvenInTheDark() {
    // New Moon on 2025-03-29 at 10:58 UTC: 20 hours later the Sun sets here, and the Moon after it.
    Site atSea = new Site(20, 164, 0);
    ShootingPlan plan = onlyPlan("2025-03-29T18:00:00Z", "2025-03-30T06:00:00Z", atSea);
    assertThat(plan.windows()).isEmpty();
    assertThat(plan.withheld())
        .contains(new Withheld(Place.LOW_SETTING, Reason.NEW_MOON))
        .contains(new Withheld(Place.HIGH, Reason.SUN_TOO_NEAR));
  }

  @Test
  void offersADaytimeMoonFarFromTheSunAndSaysThatItIsDay() {
    // First quarter on 2025-05-04: the Moon culminates before sunset, 90 degrees from the Sun.
    ShootingPlan plan = onlyPlan("2025-05-04T12:00:00Z", "2025-05-05T00:00:00Z", VIENNA);
    assertThat(plan.high().orElseThrow().light()).isEqualTo(SkyLight.DAY);
    assertThat(plan.isDarkPair()).isFalse();
  }

  @Test
  void saysThatAPolarMoonDoesNotComeDown() {
    List<ShootingPlan> plans = plans("2024-12-14T00:00:00Z", "2024-12-16T00:00:00Z", TROMSO);
    ShootingPlan up =
        plans.stream().filter(plan -> plan.pass().rise().isEmpty()).findFirst().orElseThrow();
    assertThat(up.high()).isPresent();
    assertThat(up.windows()).allSatisfy(w -> assertThat(w.from()).isBefore(w.to()));
  }

  @Test
  void offersNoHighReadingOfALowPass() {
    List<ShootingPlan> plans = plans("2024-12-26T00:00:00Z", "2025-01-03T00:00:00Z", TROMSO);
    assertThat(plans)
        .filteredOn(plan -> plan.pass().culminationApparentAltitudeDeg() < 20)
        .isNotEmpty()
        .allSatisfy(
            plan ->
                assertThat(plan.withheld())
                    .contains(new Withheld(Place.HIGH, Reason.OUT_OF_REACH)));
  }

  @Test
  void findsNoPassWhereTheMoonStaysDown() {
    Site pole = new Site(89, 0, 0);
    assertThat(SKY.passes(at("2024-12-26T00:00:00Z"), at("2025-01-02T00:00:00Z"), pole)).isEmpty();
  }

  @Test
  void choosesTheDarkerOfTwoLowWindows() {
    // First quarter: rises by day, sets by night.
    ShootingPlan plan = onlyPlan("2025-02-05T12:00:00Z", "2025-02-06T00:00:00Z", VIENNA);
    assertThat(plan.low().orElseThrow().place()).isEqualTo(Place.LOW_SETTING);
  }

  @Test
  void refusesAWindowThatEndsBeforeItBegins() {
    MoonSight sight = SKY.moonAt(at("2024-12-15T20:00:00Z"), VIENNA);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ShootingWindow(Place.HIGH, sight.at(), sight.at(), sight))
        .withMessageContaining("expected from before to");
  }

  @Test
  void namesTheLightAtTheLimitsOfTwilight() {
    assertThat(SkyLight.of(-0.83)).isEqualTo(SkyLight.DAY);
    assertThat(SkyLight.of(-0.84)).isEqualTo(SkyLight.CIVIL_TWILIGHT);
    assertThat(SkyLight.of(-6.01)).isEqualTo(SkyLight.NAUTICAL_TWILIGHT);
    assertThat(SkyLight.of(-12.01)).isEqualTo(SkyLight.ASTRONOMICAL_TWILIGHT);
    assertThat(SkyLight.of(-18.01)).isEqualTo(SkyLight.NIGHT);
    assertThatIllegalArgumentException().isThrownBy(() -> SkyLight.of(Double.NaN));
  }

  @Test
  void findsTwoMonthsWorthOfNightsForRatioAndSwing() {
    Instant from = at("2024-11-20T00:00:00Z");
    Instant to = from.plus(Duration.ofDays(60));
    List<ShootingPlan> plans = plans(from.toString(), to.toString(), VIENNA);
    List<WorthwhilePass> worth = WorthwhilePass.among(plans, SKY.apsides(from, to));
    double best =
        plans.stream()
            .filter(ShootingPlan::isDarkPair)
            .mapToDouble(plan -> plan.ratio().orElseThrow())
            .max()
            .orElseThrow();
    assertThat(worth)
        .filteredOn(pass -> pass.reasons().contains(WorthwhilePass.Reason.RATIO))
        .isNotEmpty()
        .allSatisfy(
            pass ->
                assertThat(pass.plan().ratio().orElseThrow() - 1)
                    .isGreaterThanOrEqualTo(0.9 * (best - 1)));
    assertThat(worth)
        .filteredOn(pass -> pass.reasons().contains(WorthwhilePass.Reason.SWING))
        .isNotEmpty()
        .allSatisfy(
            pass ->
                assertThat(
                        Duration.between(
                                pass.apsis().orElseThrow().at(), pass.plan().pass().culminationAt())
                            .abs())
                    .isLessThanOrEqualTo(Duration.ofHours(37)));
  }

  private static double altitude(Instant at) {
    return SKY.moonAt(at, VIENNA).apparentAltitudeDeg();
  }

  private static ShootingPlan onlyPlan(String from, String to, Site site) {
    List<ShootingPlan> plans = plans(from, to, site);
    assertThat(plans).hasSize(1);
    return plans.get(0);
  }

  private static List<ShootingPlan> plans(String from, String to, Site site) {
    ShootingWindows windows = ShootingWindows.of(SKY, site);
    return SKY.passes(at(from), at(to), site).stream().map(windows::plan).toList();
  }

  private static Instant at(String text) {
    return Instant.parse(text);
  }
}
