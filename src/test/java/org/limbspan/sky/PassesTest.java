package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PassesTest {

  private static final Instant MARCH = Instant.parse("2024-03-01T00:00:00Z");
  private static final Instant APRIL = MARCH.plus(Duration.ofDays(31));

  private final Sky sky = SkyFixture.sky();

  @Test
  void describesAPassFromRiseToSet() {
    Pass pass = sky.passes(MARCH, APRIL, new Site(50, 10, 100)).get(0);
    MoonSight rise = pass.rise().orElseThrow();
    MoonSight set = pass.set().orElseThrow();
    assertThat(pass.riseAt()).contains(rise.at());
    assertThat(pass.setAt()).contains(set.at());
    assertThat(pass.culminationAt()).isBetween(rise.at(), set.at());
    assertThat(rise.altitudeDeg() + rise.horizontalDiameterArcmin() / 120)
        .isCloseTo(-34.0 / 60, within(1e-4));
    assertThat(set.altitudeDeg() + set.horizontalDiameterArcmin() / 120)
        .isCloseTo(-34.0 / 60, within(1e-4));
    assertThat(rise.azimuthDeg()).isBetween(45.0, 180.0);
    assertThat(set.azimuthDeg()).isBetween(180.0, 315.0);
    assertThat(pass.culmination().azimuthDeg()).isCloseTo(180, within(2.0));
    assertThat(pass.culminationApparentAltitudeDeg())
        .isBetween(pass.culminationAltitudeDeg(), pass.culminationAltitudeDeg() + 0.1);
    assertThat(pass.diameterAtRiseArcmin()).hasValue(rise.horizontalDiameterArcmin());
    assertThat(pass.diameterAtSetArcmin()).hasValue(set.horizontalDiameterArcmin());
    assertThat(pass.predictedRatio())
        .hasValue(pass.diameterAtCulminationArcmin() / rise.horizontalDiameterArcmin());
  }

  /** The Moon crosses the meridian up to some minutes before or after it stands highest. */
  @Test
  void culminatesAtTheGreatestAltitudeNotOnTheMeridian() {
    Site site = new Site(50, 10, 100);
    double farthestDeg = 0;
    for (Pass pass : sky.passes(MARCH, APRIL, site)) {
      Instant at = pass.culminationAt();
      double best = pass.culminationAltitudeDeg();
      assertThat(sky.moonAt(at.minusSeconds(30), site).altitudeDeg()).isLessThan(best);
      assertThat(sky.moonAt(at.plusSeconds(30), site).altitudeDeg()).isLessThan(best);
      farthestDeg = Math.max(farthestDeg, Math.abs(pass.culmination().azimuthDeg() - 180));
    }
    assertThat(farthestDeg).isBetween(0.1, 2.0);
  }

  /**
   * Passes follow each other by 24 h 50 min on average, so about once a month a civil day has no
   * rise, another no culmination, another no set: at 50 N, 10 E in March 2024 (UTC) these.
   */
  @Test
  void leavesOutTheDaysWithoutRiseCulminationOrSet() {
    List<Pass> passes =
        sky.passes(
            MARCH.minus(Duration.ofDays(2)), APRIL.plus(Duration.ofDays(2)), new Site(50, 10, 100));
    assertThat(daysOfMarchWithout(passes.stream().map(pass -> pass.riseAt().orElseThrow())))
        .containsExactly(2, 30);
    assertThat(daysOfMarchWithout(passes.stream().map(Pass::culminationAt))).containsExactly(26);
    assertThat(daysOfMarchWithout(passes.stream().map(pass -> pass.setAt().orElseThrow())))
        .containsExactly(15);
    for (int i = 1; i < passes.size(); i++) {
      assertThat(Duration.between(passes.get(i - 1).culminationAt(), passes.get(i).culminationAt()))
          .isBetween(Duration.ofHours(24), Duration.ofHours(26));
    }
  }

  private static List<Integer> daysOfMarchWithout(Stream<Instant> instants) {
    Set<LocalDate> with =
        instants.map(at -> LocalDate.ofInstant(at, ZoneOffset.UTC)).collect(Collectors.toSet());
    return IntStream.rangeClosed(1, 31)
        .filter(day -> !with.contains(LocalDate.of(2024, 3, day)))
        .boxed()
        .toList();
  }

  /** Tromso, 69.65 N: never up from 2 to 8 March 2024, never down from 14 to 21 March. */
  @Test
  void endsACircumpolarStretchWithASetAndBeginsItWithARise() {
    List<Pass> passes = sky.passes(MARCH, APRIL, new Site(69.65, 18.95, 0));
    assertThat(days(passes)).contains(1, 8).doesNotContain(2, 3, 4, 5, 6, 7);
    assertThat(days(passes.stream().filter(pass -> pass.rise().isEmpty()).toList()))
        .containsExactly(15, 16, 17, 18, 19, 20);
    assertThat(days(passes.stream().filter(pass -> pass.set().isEmpty()).toList()))
        .containsExactly(14, 15, 16, 17, 18, 19);
    assertThat(passes.get(9).predictedRatio()).isEmpty();
  }

  /** Longyearbyen, 78.22 N: up for eleven days on end. */
  @Test
  void countsEachCulminationOfACircumpolarMoonAsAPass() {
    List<Pass> passes = sky.passes(MARCH, APRIL, new Site(78.22, 15.65, 0));
    List<Pass> neverDown =
        passes.stream().filter(pass -> pass.rise().isEmpty() && pass.set().isEmpty()).toList();
    assertThat(days(neverDown)).containsExactly(13, 14, 15, 16, 17, 18, 19, 20, 21);
  }

  /** At the poles the Moon rises and sets once a month. */
  @Test
  void risesOnceAMonthAtThePoles() {
    for (double latitudeDeg : new double[] {-90, 90}) {
      List<Pass> passes =
          sky.passes(MARCH, MARCH.plus(Duration.ofDays(273)), new Site(latitudeDeg, 0, 0));
      assertThat(passes).hasSize(10);
      for (Pass pass : passes) {
        assertThat(Duration.between(pass.riseAt().orElseThrow(), pass.setAt().orElseThrow()))
            .isBetween(Duration.ofDays(12), Duration.ofDays(15));
      }
    }
  }

  /** 89 N: while the declination rises by degrees a day there is no daily culmination. */
  @Test
  void hasNoDailyCulminationNearThePoleWhileTheMoonClimbs() {
    List<Pass> passes = sky.passes(MARCH, APRIL, new Site(89, 0, 0));
    Pass first = passes.get(0);
    assertThat(Duration.between(first.riseAt().orElseThrow(), first.culminationAt()))
        .isGreaterThan(Duration.ofDays(2));
  }

  /** Ten-minute steps of the full computation see as many rises and sets as the search. */
  @Test
  void missesNoRiseThatAPlainScanSees() {
    for (Site site :
        List.of(
            new Site(0, 0, 0), new Site(66, 25, 0), new Site(-72, 170, 0), new Site(88, -40, 0))) {
      Instant from = Instant.parse("2025-06-01T00:00:00Z");
      Instant to = from.plus(Duration.ofDays(60));
      long rises = 0;
      boolean up = isUp(from, site);
      for (Instant at = from; at.isBefore(to); at = at.plusSeconds(600)) {
        boolean upNow = isUp(at, site);
        rises += upNow && !up ? 1 : 0;
        up = upNow;
      }
      List<Instant> found =
          sky.passes(from.minus(Duration.ofDays(20)), to.plus(Duration.ofDays(20)), site).stream()
              .flatMap(pass -> pass.riseAt().stream())
              .filter(at -> !at.isBefore(from) && at.isBefore(to.minusSeconds(600)))
              .toList();
      assertThat(found).as("%s", site).hasSize(Math.toIntExact(rises));
    }
  }

  private boolean isUp(Instant at, Site site) {
    MoonSight sight = sky.moonAt(at, site);
    return sight.altitudeDeg() + sight.horizontalDiameterArcmin() / 120 > -34.0 / 60;
  }

  @Test
  void refusesAPassThatSetsBeforeItCulminates() {
    Site site = new Site(50, 10, 100);
    MoonSight early = sky.moonAt(MARCH, site);
    MoonSight late = sky.moonAt(APRIL, site);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Pass(Optional.empty(), late, Optional.of(early)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Pass(Optional.of(late), early, Optional.empty()));
  }

  private static List<Integer> days(List<Pass> passes) {
    return passes.stream()
        .map(pass -> pass.culminationAt().atZone(ZoneOffset.UTC).getDayOfMonth())
        .toList();
  }
}
