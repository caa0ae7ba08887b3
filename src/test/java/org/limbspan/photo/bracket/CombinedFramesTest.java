package org.limbspan.photo.bracket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Axis;

class CombinedFramesTest {

  private static final Instant NIGHT = Instant.parse("2026-05-29T20:00:00Z");
  private static final Offset<Double> BY_HAND = within(1e-9);

  @Test
  void leavesOneFrameAsItIs() {
    CombinedFrames combined = CombinedFrames.of(List.of(frame(0, 800, 0.3, 0.4)));
    assertThat(combined.diameterPx()).isEqualTo(800);
    assertThat(combined.uncertaintyPx()).isCloseTo(0.5, BY_HAND);
    assertThat(combined.takenAt()).isEqualTo(NIGHT);
    assertThat(combined.birgeRatio()).isZero();
  }

  @Test
  void weighsFramesByTheirUncertainty() {
    // weights 1 / 0.25 and 1 / 1: shares 0.8 and 0.2
    CombinedFrames combined =
        CombinedFrames.of(List.of(frame(0, 800, 0.3, 0.4), frame(100, 801, 0.6, 0.8)));
    assertThat(combined.diameterPx()).isCloseTo(800.2, BY_HAND);
    assertThat(combined.takenAt()).isEqualTo(NIGHT.plusSeconds(20));
    // own parts: 0.8 * 0.3 and 0.2 * 0.6 in quadrature, times the Birge ratio; shared: 0.8 * 0.4 +
    // 0.2 * 0.8
    double ratio = Math.sqrt(0.2 * 0.2 / 0.09 + 0.8 * 0.8 / 0.36);
    assertThat(combined.birgeRatio()).isCloseTo(ratio, BY_HAND);
    assertThat(combined.uncertaintyPx())
        .isCloseTo(Math.hypot(ratio * Math.hypot(0.24, 0.12), 0.48), BY_HAND);
  }

  @Test
  void neverMakesTheSharedPartSmaller() {
    List<Frame> frames = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      frames.add(frame(i, 800, 0.1, 0.4));
    }
    assertThat(CombinedFrames.of(frames).uncertaintyPx()).isCloseTo(Math.hypot(0.01, 0.4), BY_HAND);
  }

  @Test
  void setsAnOddFrameAside() {
    Frame odd = frame(2, 808, 0.2, 0.3);
    CombinedFrames combined =
        CombinedFrames.of(List.of(frame(0, 800, 0.2, 0.3), odd, frame(4, 800.2, 0.2, 0.3)));
    assertThat(combined.used()).hasSize(2);
    assertThat(combined.setAside()).hasSize(1);
    SetAside setAside = combined.setAside().get(0);
    assertThat(setAside.frame()).isEqualTo(odd);
    assertThat(setAside.differencePercent()).isCloseTo(100 * 7.9 / 800.1, within(1e-6));
    assertThat(combined.diameterPx()).isCloseTo(800.1, BY_HAND);
  }

  @Test
  void decidesNothingBetweenTwoFrames() {
    CombinedFrames combined =
        CombinedFrames.of(List.of(frame(0, 800, 0.2, 0.3), frame(2, 808, 0.2, 0.3)));
    assertThat(combined.setAside()).isEmpty();
    // half the difference is what two values can say about their mean
    assertThat(combined.uncertaintyPx()).isBetween(4.0, 4.1);
  }

  @Test
  void decidesNothingBetweenThreeFramesThatAllDisagree() {
    CombinedFrames combined =
        CombinedFrames.of(
            List.of(frame(0, 800, 0.1, 0), frame(2, 804, 0.1, 0), frame(4, 809, 0.1, 0)));
    assertThat(combined.setAside()).isEmpty();
    assertThat(combined.used()).hasSize(3);
    assertThat(combined.uncertaintyPx()).isGreaterThan(2);
  }

  @Test
  void keepsMoreThanHalf() {
    CombinedFrames combined =
        CombinedFrames.of(
            List.of(
                frame(0, 800, 0.1, 0),
                frame(1, 800.1, 0.1, 0),
                frame(2, 799.9, 0.1, 0),
                frame(3, 808, 0.1, 0),
                frame(4, 820, 0.1, 0)));
    assertThat(combined.used()).hasSize(3);
    assertThat(combined.setAside()).hasSize(2);
    assertThat(combined.diameterPx()).isCloseTo(800, within(0.01));
  }

  @Test
  void doesNotMindTheOrderOfArrival() {
    Random random = new Random(11);
    List<Frame> frames = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      frames.add(frame(i, 800 + random.nextGaussian(), 0.2 + random.nextDouble(), 0.3));
    }
    CombinedFrames expected = CombinedFrames.of(frames);
    for (int i = 0; i < 20; i++) {
      Collections.shuffle(frames, random);
      assertThat(CombinedFrames.of(frames)).isEqualTo(expected);
    }
  }

  @Test
  void givesAnUncertaintyThatIsTrue() {
    Random random = new Random(12);
    double squares = 0;
    int trials = 2000;
    for (int trial = 0; trial < trials; trial++) {
      double shared = 0.3 * random.nextGaussian();
      List<Frame> frames = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        double own = 0.1 + 0.2 * random.nextDouble();
        frames.add(frame(i, 800 + shared + own * random.nextGaussian(), own, 0.3));
      }
      CombinedFrames combined = CombinedFrames.of(frames);
      double unit = (combined.diameterPx() - 800) / combined.uncertaintyPx();
      squares += unit * unit;
    }
    // a scale that only ever enlarges makes it cautious by a few percent
    assertThat(Math.sqrt(squares / trials)).isBetween(0.9, 1.05);
  }

  @Test
  void findsSizeThatGrowsWithTheExposure() {
    ExposureTrend trend =
        CombinedFrames.of(
                List.of(
                    exposed(0, 800, 0.1, -8.0),
                    exposed(1, 800.8, 0.1, -7.0),
                    exposed(2, 801.6, 0.1, -6.0)))
            .trend()
            .orElseThrow();
    // 0.8 px a stop of 800.8 px; the uncertainty by hand: 0.1 / 800.8 / sqrt(2)
    assertThat(trend.percentPerStop()).isCloseTo(0.0999, within(1e-4));
    assertThat(trend.uncertaintyPercentPerStop()).isCloseTo(0.00883, within(1e-5));
    assertThat(trend.isSignificant()).isTrue();
  }

  @Test
  void saysNothingOfExposuresThatAreAlikeOrUntold() {
    assertThat(
            CombinedFrames.of(
                    List.of(
                        exposed(0, 800, 0.1, -8.0),
                        exposed(1, 801, 0.1, -7.5),
                        exposed(2, 802, 0.1, null)))
                .trend())
        .isEmpty();
  }

  @Test
  void refusesABracketOfNothing() {
    assertThatThrownBy(() -> CombinedFrames.of(List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("one or more");
  }

  private static Frame frame(int second, double diameterPx, double ownPx, double sharedPx) {
    return new Frame(
        second,
        second + ".jpg",
        NIGHT.plusSeconds(second),
        0,
        Axis.HORIZONTAL,
        diameterPx,
        ownPx,
        sharedPx,
        null);
  }

  private static Frame exposed(
      int second, double diameterPx, double ownPx, @Nullable Double stops) {
    return new Frame(
        second,
        second + ".jpg",
        NIGHT.plusSeconds(second),
        0,
        Axis.HORIZONTAL,
        diameterPx,
        ownPx,
        0,
        stops);
  }
}
