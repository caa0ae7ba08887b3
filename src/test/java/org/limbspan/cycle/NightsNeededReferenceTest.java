package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.random.RandomDataGenerator;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

class NightsNeededReferenceTest {

  private static final Site SITE = new Site(40, -3.7, 650);

  /** Coarse enough that one night does not tell: half a percent a reading. */
  private static final double READING_SD = 0.005;

  private static final int TRIALS = 300;

  /**
   * As many nights as it says, photographed with that noise: the chance it says is the share of
   * simulated experimenters who find the growth.
   */
  @Test
  void simulatedExperimentersFindTheGrowthAsOftenAsItSays() {
    List<MoonSight> sights = passes(60);
    double growth = typicalGrowth(sights);
    double ofOne = NightsNeeded.ofOneNight(READING_SD, growth);
    long nights = NightsNeeded.toTell(ofOne, 1, 0.9);
    assertThat(nights).isBetween(5L, 30L);
    int found = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      NightRatios ratios = NightRatioEstimator.estimate(photographed(sights, nights, trial), SITE);
      double[] sums = new double[2];
      for (NightPair pair : ratios.pairs()) {
        double expected = Math.log(pair.predictedRatio());
        sums[0] += expected * Math.log(pair.observedRatio());
        sums[1] += expected * expected;
      }
      double slope = sums[0] / sums[1];
      double uncertainty = Math.sqrt(2 / sums[1]) * READING_SD;
      found += slope > 3 * uncertainty ? 1 : 0;
    }
    double share = (double) found / TRIALS;
    // Nights are counted whole, so the chance is a little more than asked for; 0.9 with a
    // binomial standard deviation of 0.017 over 300 trials.
    assertThat(share).isCloseTo(NightsNeeded.chance(nights, ofOne, 1), within(0.06));
    assertThat(share).isGreaterThan(0.85);
  }

  /** What the pairs themselves show is what their noise was made of. */
  @Test
  void takesTheNoiseFromTheRigsOwnPairs() {
    List<MoonSight> sights = passes(60);
    NightRatios ratios = NightRatioEstimator.estimate(photographed(sights, 60, 5), SITE);
    assertThat(NightsNeeded.ofOneNight(ratios.pairs()))
        .isCloseTo(NightsNeeded.ofOneNight(READING_SD, typicalGrowth(sights)), within(0.15 * 0.7));
  }

  /**
   * NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.2, from memory: N = ((z(1 - alpha/2) +
   * z(1 - beta)) sigma / delta)^2; here 3 stands for z(1 - alpha/2), and z(0.9) is 1.2816.
   */
  @Test
  void countsAsTheHandbookDoes() {
    assertThat(NightsNeeded.toTell(1, 1, 0.9)).isEqualTo((long) Math.ceil(4.2816 * 4.2816));
    assertThat(NightsNeeded.toTell(0.5, 1, 0.9)).isEqualTo(5);
    assertThat(NightsNeeded.toTell(1e-6, 1, 0.9)).isEqualTo(1);
    assertThat(NightsNeeded.chance(9, 1, 1)).isCloseTo(0.5, within(1e-12));
  }

  @Test
  void saysNothingOfNoNightsAndRefusesNonsense() {
    assertThat(NightsNeeded.ofOneNight(List.of())).isInfinite();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> NightsNeeded.toTell(1, 1, 1))
        .withMessageContaining("power 1.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> NightsNeeded.ofOneNight(0.001, 0))
        .withMessageContaining("growth 0.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> NightsNeeded.chance(3, Double.NaN, 1))
        .withMessageContaining("uncertaintyOfOne NaN");
  }

  private static double typicalGrowth(List<MoonSight> sights) {
    double squares = 0;
    for (int i = 0; i < sights.size(); i += 2) {
      squares +=
          Math.pow(
              Math.log(
                  sights.get(i + 1).horizontalDiameterArcmin()
                      / sights.get(i).horizontalDiameterArcmin()),
              2);
    }
    return Math.sqrt(2 * squares / sights.size());
  }

  /** A low and a high sight of each of so many passes, one after the other. */
  private static List<MoonSight> passes(int count) {
    List<MoonSight> chosen = new ArrayList<>();
    Instant day = Instant.parse("2024-01-01T12:00:00Z");
    while (chosen.size() < 2 * count) {
      MoonSight high = SkyFixture.sky().moonAt(day, SITE);
      for (int minutes = 20; minutes < 1440; minutes += 20) {
        MoonSight sight = SkyFixture.sky().moonAt(day.plus(Duration.ofMinutes(minutes)), SITE);
        high = sight.altitudeDeg() > high.altitudeDeg() ? sight : high;
      }
      MoonSight low = high;
      for (int minutes = 0; low.altitudeDeg() > 10 && minutes < 600; minutes += 10) {
        low = SkyFixture.sky().moonAt(high.at().minus(Duration.ofMinutes(minutes)), SITE);
      }
      if (high.altitudeDeg() > 40) {
        chosen.add(low);
        chosen.add(high);
      }
      day = day.plus(Duration.ofDays(2));
    }
    return chosen;
  }

  private static List<Observation> photographed(List<MoonSight> sights, long nights, long seed) {
    RandomDataGenerator random = new RandomDataGenerator(900 + seed);
    List<Observation> readings = new ArrayList<>();
    int first = 2 * random.nextInt(0, sights.size() / 2 - 1);
    for (int i = 0; i < 2 * nights; i++) {
      MoonSight sight = sights.get((first + i) % sights.size());
      readings.add(
          new Observation(
              sight.at(),
              Axis.HORIZONTAL,
              sight.horizontalDiameterArcmin() * Math.exp(random.nextNormal(0, READING_SD)),
              READING_SD,
              sight,
              0,
              Sighted.NONE));
    }
    return readings;
  }
}
