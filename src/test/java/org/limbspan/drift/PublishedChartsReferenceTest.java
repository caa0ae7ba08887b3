package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.SkyFixture;

/**
 * Worked examples of control charts, their measurements taken for the sizes of nights: deviations
 * from the target over their standard deviation, times 0.1 percent. The charts know target and
 * scatter; the judge has to find out.
 */
class PublishedChartsReferenceTest {

  private static final double UNIT = 0.001;

  /** NIST/SEMATECH e-Handbook of Statistical Methods, sec. 6.3.2.3: CUSUM, target 325. */
  private static final double[] CUSUM = {
    324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625,
    325.15, 328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35
  };

  /** The same, sec. 6.3.2.4: EWMA, target 50; no point beyond the limits. */
  private static final double[] EWMA = {
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2,
    52.6, 52.4, 53.6, 52.1
  };

  /**
   * D. C. Montgomery, Introduction to Statistical Quality Control, table 9.1: 20 of mean 10 and 10
   * of mean 11, standard deviation 1. The CUSUM of k = 1/2, h = 5 signals at the 29th.
   */
  private static final double[] ONE_SIGMA = {
    9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08,
    9.37, 10.62, 10.31, 8.52, 10.84, 10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31,
    10.52
  };

  private final Judge judge = new Judge(SkyFixture.sky());

  /** The chart's first signal is the 14th; the shift begins with the 13th. */
  @Test
  void signalsWhereTheCusumOfTheHandbookDoes() {
    List<Observation> nights = nights(CUSUM, 325, 0.635);
    for (int n = 1; n <= 13; n++) {
      assertThat(findings(nights.subList(0, n))).isEmpty();
    }
    for (int n = 14; n <= nights.size(); n++) {
      List<Finding> findings = findings(nights.subList(0, n));
      assertThat(findings).extracting(Finding::kind).containsExactly(AlertKind.SCALE_STEP);
      assertThat(findings.get(0).evidenceAt()).isEqualTo(nights.get(13).takenAt());
    }
  }

  /** Means of the example before and after: 324.79 and 327.70, 4.6 standard deviations apart. */
  @Test
  void measuresTheShiftOfTheHandbook() {
    List<Observation> nights = nights(CUSUM, 325, 0.635);
    Finding step = findings(nights).get(0);
    assertThat(step.sizePercent()).isCloseTo(0.46, within(0.06));
    assertThat(step.onsetFrom()).isBeforeOrEqualTo(nights.get(12).takenAt());
    assertThat(step.onsetTo()).isAfter(nights.get(11).takenAt());
  }

  @Test
  void isSilentWhereTheEwmaOfTheHandbookIs() {
    List<Observation> nights = nights(EWMA, 50, 2.0539);
    for (int n = 1; n <= nights.size(); n++) {
      assertThat(findings(nights.subList(0, n))).isEmpty();
    }
  }

  /**
   * A shift of one standard deviation: never before it, and not sooner than the chart that knew.
   */
  @Test
  void isNotQuickerThanTheCusumThatKnowsTargetAndScatter() {
    List<Observation> nights = nights(ONE_SIGMA, 10, 1);
    for (int n = 1; n < 29; n++) {
      assertThat(findings(nights.subList(0, n))).isEmpty();
    }
  }

  private List<Finding> findings(List<Observation> nights) {
    return judge.judge(Histories.rig(List.of(), nights));
  }

  private static List<Observation> nights(double[] values, double target, double deviation) {
    List<Observation> nights = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      Instant at = Histories.START.plus(Duration.ofDays(2L * i));
      nights.add(Histories.reading(at, UNIT * (values[i] - target) / deviation));
    }
    return nights;
  }
}
