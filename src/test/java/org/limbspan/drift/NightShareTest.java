package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NightShareTest {

  /** Cutting off at 2.5 takes a little from it. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.25, 1})
  void findsTheShareOfTheNights(double share) {
    Random random = new Random(8);
    double[] noise = new double[6000];
    double night = 0;
    for (int i = 0; i < noise.length; i++) {
      night = i % 2 == 0 ? Math.sqrt(share) * random.nextGaussian() : night;
      noise[i] = Histories.STATED * (random.nextGaussian() + night);
    }
    List<Fact> facts =
        Timeline.of(Histories.setup(List.of(), Histories.pairs(noise.length, i -> noise[i])));
    NightShare found = new NightShare();
    Track still = Track.start(Hypothesis.none(Lens.AS_LOGGED), NoisePrior.AS_STATED, 1e-12, 0);
    facts.forEach(fact -> found.take(fact, still));
    assertThat(found.value()).isCloseTo(Math.max(0.02, share), within(0.04 + 0.1 * share));
  }
}
