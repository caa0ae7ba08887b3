package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Scanner;
import java.util.stream.IntStream;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NIST/ITL StRD, nonlinear regression, data set ENSO (Kahaner, Moler and Nash 1989): a level, a
 * known period of 12 months and two free ones, through the same model and fit as the lunar periods.
 * Certified values as printed in the file; compared to seven digits, the periods' standard
 * deviations to four.
 */
class HarmonicFitReferenceTest {

  private static final int OBSERVATIONS = 168;
  private static final double CERTIFIED_PERIOD_4 = 44.311088700;
  private static final double CERTIFIED_PERIOD_7 = 26.887614440;
  private static final double CERTIFIED_SQUARES = 788.53978668;
  private static final double CERTIFIED_LEVEL = 10.510749193;
  private static final double[] CERTIFIED_AMPLITUDES = {
    3.0762128085, 0.53280138227, -1.6231428586, 0.52554493756, 0.21232288488, 1.4966870418
  };
  private static final double CERTIFIED_SD_4 = 0.94408025976;
  private static final double CERTIFIED_SD_7 = 0.41612939130;
  private static final double CERTIFIED_RESIDUAL_SD = 2.2269642403;

  private static final List<Line> LINES =
      List.of(
          new Line(1 / 12.0, List.of(0, 0), Double.POSITIVE_INFINITY),
          new Line(0, List.of(1, 0), Double.POSITIVE_INFINITY),
          new Line(0, List.of(0, 1), Double.POSITIVE_INFINITY));

  private final double[] pressures = new double[OBSERVATIONS];
  private final double[] months = new double[OBSERVATIONS];
  private final Grouping each = Grouping.by(IntStream.range(0, 168).boxed().toList());
  private final Grouping all = Grouping.by(Collections.nCopies(OBSERVATIONS, "level"));
  private final Whitening plain = new Whitening(ones(), each, 0, all);

  HarmonicFitReferenceTest() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            HarmonicFitReferenceTest.class.getResourceAsStream(
                "/reference/published/nist-strd-enso.dat"))) {
      List<String> lines =
          new String(in.readAllBytes(), StandardCharsets.US_ASCII).lines().skip(60).toList();
      for (int i = 0; i < OBSERVATIONS; i++) {
        Scanner fields = new Scanner(lines.get(i)).useLocale(Locale.ROOT);
        pressures[i] = fields.nextDouble();
        months[i] = fields.nextDouble();
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"40, 25, 3.0, 0.5, -0.7, -1.3, -0.3, 1.4", "44, 26, 3.0, 0.5, -1.5, 0.5, -0.1, 1.5"})
  void findsTheCertifiedMinimumFromBothStarts(
      double b4, double b7, double b2, double b3, double b5, double b6, double b8, double b9) {
    HarmonicModel model = new HarmonicModel(months, LINES, 2, ParallaxLaw.none());
    HarmonicFit.Minimum minimum =
        new HarmonicFit(model, pressures, plain)
            .from(new double[] {1 / b4, 1 / b7, b2, b3, b5, b6, b8, b9}, 1e-15)
            .orElseThrow();

    double[] found = minimum.parameters().toArray();
    assertThat(minimum.cost()).isCloseTo(CERTIFIED_SQUARES, within(1e-7 * CERTIFIED_SQUARES));
    assertThat(1 / found[0]).isCloseTo(CERTIFIED_PERIOD_4, within(1e-7 * CERTIFIED_PERIOD_4));
    assertThat(1 / found[1]).isCloseTo(CERTIFIED_PERIOD_7, within(1e-7 * CERTIFIED_PERIOD_7));
    for (int k = 0; k < CERTIFIED_AMPLITUDES.length; k++) {
      assertThat(found[2 + k]).isCloseTo(CERTIFIED_AMPLITUDES[k], within(1e-6));
    }
    double[] rest = pressures.clone();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= model.at(found).values()[i];
    }
    assertThat(plain.intercepts(rest)[0]).isCloseTo(CERTIFIED_LEVEL, within(1e-7));
  }

  @Test
  void statesTheCertifiedUncertaintiesOfThePeriods() {
    HarmonicModel model = new HarmonicModel(months, LINES, 2, ParallaxLaw.none());
    double[] best =
        new HarmonicFit(model, pressures, plain)
            .from(new double[] {1 / 44.0, 1 / 26.0, 3, 0.5, -1.5, 0.5, -0.1, 1.5}, 1e-15)
            .orElseThrow()
            .parameters()
            .toArray();
    Rows rows =
        new Rows(pressures, model.at(best).columns(), model.priorPrecision(), ones(), each, all);
    RealMatrix covariance =
        new NightSums(rows, ones())
            .equations(0)
            .solve(CERTIFIED_RESIDUAL_SD)
            .orElseThrow()
            .covariance();

    assertThat(sdOfPeriod(covariance, best, 0)).isCloseTo(CERTIFIED_SD_4, within(1e-4));
    assertThat(sdOfPeriod(covariance, best, 1)).isCloseTo(CERTIFIED_SD_7, within(1e-4));
  }

  private static double sdOfPeriod(RealMatrix covariance, double[] best, int rate) {
    return Math.sqrt(covariance.getEntry(rate, rate)) / (best[rate] * best[rate]);
  }

  private static double[] ones() {
    double[] ones = new double[OBSERVATIONS];
    Arrays.fill(ones, 1);
    return ones;
  }
}
