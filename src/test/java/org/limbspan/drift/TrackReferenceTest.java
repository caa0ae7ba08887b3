package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.hipparchus.stat.regression.GLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/**
 * The estimates of a track, made reading by reading, against generalised least squares of all
 * readings at once by Hipparchus: without outliers they agree but for the few percent that the
 * suspicion of outliers costs.
 */
class TrackReferenceTest {

  private static final int COUNT = 80;
  private static final int ONSET = 44;
  private static final double NIGHT_SHARE = 0.25;

  private final Random random = new Random(5);
  private final double[] noise = noise();

  /** Normal, but none beyond 1.8 standard deviations, where it might count as an outlier. */
  private double[] noise() {
    double[] noise = new double[COUNT];
    double night = 0;
    for (int i = 0; i < COUNT; i++) {
      night = i % 2 == 0 ? 0.5 * cut() : night;
      noise[i] = Histories.STATED * (cut() + night);
    }
    return noise;
  }

  private double cut() {
    double normal = random.nextGaussian();
    return Math.abs(normal) < 1.8 ? normal : cut();
  }

  @Test
  void agreesWithGeneralisedLeastSquaresOnAStep() {
    List<Fact> facts = facts(i -> i >= ONSET ? 0.005 : 0);
    agrees(facts, Regressor.stepFrom(facts.get(ONSET).day));
  }

  @Test
  void agreesWithGeneralisedLeastSquaresOnADrift() {
    List<Fact> facts = facts(i -> 1e-4 * Math.max(0, i / 2 - ONSET / 2));
    agrees(facts, Regressor.slopeFrom(facts.get(ONSET).day));
  }

  private List<Fact> facts(IntToDoubleFunction change) {
    return Timeline.of(
        Histories.setup(
            List.of(), Histories.pairs(COUNT, i -> 0.01 + noise[i] + change.applyAsDouble(i))));
  }

  private static void agrees(List<Fact> facts, Regressor regressor) {
    Track track = Track.start(Hypothesis.none(Lens.AS_LOGGED), new NoisePrior(200, 200), 1, 0);
    track.startEffect(regressor, 1);
    facts.forEach(fact -> track.take(fact, NIGHT_SHARE));

    GLSMultipleLinearRegression regression = new GLSMultipleLinearRegression();
    double[] values = new double[COUNT];
    double[][] design = new double[COUNT][];
    double[][] covariance = new double[COUNT][COUNT];
    double variance = Histories.STATED * Histories.STATED;
    for (int i = 0; i < COUNT; i++) {
      values[i] = facts.get(i).value;
      design[i] = new double[] {regressor.of(facts.get(i))};
      for (int j = 0; j < COUNT; j++) {
        double common = i / 2 == j / 2 ? NIGHT_SHARE * variance : 0;
        covariance[i][j] = common + (i == j ? variance : 0);
      }
    }
    regression.newSampleData(values, design, covariance);
    double[] expected = regression.estimateRegressionParameters();
    double[][] spread = regression.estimateRegressionParametersVariance();
    for (int i = 0; i < 2; i++) {
      int unknown = i == 0 ? Track.LEVEL : Track.EFFECT;
      double deviation = Math.sqrt(spread[i][i]);
      assertThat(track.mean(unknown)).isCloseTo(expected[i], within(0.15 * deviation));
      assertThat(Math.sqrt(track.variance(unknown) / track.noiseVariance()))
          .isCloseTo(deviation, within(0.07 * deviation));
    }
  }
}
