package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.random.RandomDataGenerator;
import org.junit.jupiter.api.Test;

class RobustRegressionTest {

  private static final int SIZE = 400;
  private static final double STATED = 0.001;

  private final RandomDataGenerator random = new RandomDataGenerator(20240229);
  private final double[] x = new double[SIZE];
  private final double[] y = new double[SIZE];
  private final List<Integer> nights = new ArrayList<>();

  RobustRegressionTest() {
    for (int i = 0; i < SIZE; i++) {
      nights.add(i / 4);
      x[i] = random.nextUniform(-0.05, 0.05);
    }
  }

  @Test
  void findsFactorAndNightPart() {
    fill(1.2, 0.002);
    Noise noise = fit().noise();
    assertThat(noise.statedFactor()).isCloseTo(1.2, within(0.15));
    assertThat(noise.nightSd()).isCloseTo(0.002, within(0.0004));
  }

  @Test
  void oneGrossSlipMovesNothing() {
    fill(1, 0.0004);
    Estimate before = fit().coefficient(0);
    y[7] += Math.log(10);
    Estimate after = fit().coefficient(0);
    assertThat(after.value()).isCloseTo(before.value(), within(before.uncertainty() / 4));
    assertThat(after.uncertainty())
        .isCloseTo(before.uncertainty(), within(0.1 * before.uncertainty()));
  }

  @Test
  void agreesWithPlainLeastSquaresWhereNothingIsShared() {
    fill(1, 0);
    double meanX = Arrays.stream(x).average().orElseThrow();
    double meanY = Arrays.stream(y).average().orElseThrow();
    double xy = IntStream.range(0, SIZE).mapToDouble(i -> (x[i] - meanX) * (y[i] - meanY)).sum();
    double xx = IntStream.range(0, SIZE).mapToDouble(i -> (x[i] - meanX) * (x[i] - meanX)).sum();
    assertThat(fit().coefficient(0).value())
        .isCloseTo(xy / xx, within(0.2 * fit().coefficient(0).uncertainty()));
  }

  @Test
  void givesNoAnswerWithoutLeverage() {
    Arrays.fill(x, 3.44);
    fill(1, 0);
    assertThat(RobustRegression.fit(rows(SIZE), NightPart.RANDOM, new double[] {1})).isEmpty();
  }

  @Test
  void givesNoAnswerForASingleReading() {
    fill(1, 0);
    assertThat(RobustRegression.fit(rows(1), NightPart.RANDOM, new double[] {1})).isEmpty();
    assertThat(RobustRegression.fit(rows(0), NightPart.RANDOM, new double[] {1})).isEmpty();
  }

  private void fill(double factor, double nightSd) {
    double night = 0;
    for (int i = 0; i < SIZE; i++) {
      night = i % 4 == 0 ? random.nextNormal(0, 1) : night;
      y[i] = 0.9 * x[i] + 2 + nightSd * night + random.nextNormal(0, factor * STATED);
    }
  }

  private RobustRegression.Fit fit() {
    return RobustRegression.fit(rows(SIZE), NightPart.RANDOM, new double[] {1}).orElseThrow();
  }

  private Rows rows(int size) {
    double[] stated = new double[size];
    Arrays.fill(stated, STATED);
    return Rows.of(
        Arrays.copyOf(y, size),
        new double[][] {Arrays.copyOf(x, size)},
        stated,
        Grouping.by(nights.subList(0, size)),
        Grouping.by(nights.subList(0, size).stream().map(night -> "setup").toList()));
  }
}
