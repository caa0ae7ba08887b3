package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ThinningTest {

  @Test
  void keepsEverythingThatFits() {
    assertThat(Thinning.indexes(new double[] {0, 1, 5}, i -> i, 3)).containsExactly(0, 1, 2);
    assertThat(Thinning.indexes(new double[0], i -> i, 10)).isEmpty();
  }

  @Test
  void keepsTheExtremesOfEachStretch() {
    double[] epochS = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
    double[] value = {5, 9, 1, 5, 5, 5, 5, 0, 9, 5};
    assertThat(Thinning.indexes(epochS, i -> value[i], 4)).containsExactly(1, 2, 7, 8);
  }

  @Test
  void keepsOneOfManyAtOneInstant() {
    assertThat(Thinning.indexes(new double[] {7, 7, 7, 7, 7}, i -> 1, 4)).containsExactly(0);
  }

  @Test
  void keepsWithinItsBoundAndNeverLosesTheGreatestOrTheLeast() {
    SplittableRandom random = new SplittableRandom(5);
    for (int round = 0; round < 100; round++) {
      double[] epochS = random.doubles(3000, 0, 1e8).sorted().toArray();
      double[] value = random.doubles(3000).toArray();
      int most = random.nextInt(2, 800);
      int[] kept = Thinning.indexes(epochS, i -> value[i], most);
      assertThat(kept.length).isLessThanOrEqualTo(most);
      assertThat(IntStream.of(kept).boxed()).isSorted().doesNotHaveDuplicates();
      double[] drawn = Arrays.stream(kept).mapToDouble(i -> value[i]).toArray();
      assertThat(Arrays.stream(drawn).max()).isEqualTo(Arrays.stream(value).max());
      assertThat(Arrays.stream(drawn).min()).isEqualTo(Arrays.stream(value).min());
    }
  }

  @Test
  void refusesRoomForLessThanTwo() {
    assertThatThrownBy(() -> Thinning.indexes(new double[] {1}, i -> i, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("most 1");
  }
}
