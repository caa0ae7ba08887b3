package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Seeded invariants of the mean plate scale. */
class ScaleAveragePropertyTest {

  private static final Percentage TIGHT = Percentage.withPercentage(1e-9);

  private final Random random = new Random(20_260_502);

  @Test
  void orderOfTheCalibrationsDoesNotMatter() {
    for (int run = 0; run < 200; run++) {
      List<Calibration> calibrations = randomCalibrations(random);
      MeanScale before = ScaleAverage.of(calibrations);
      Collections.shuffle(calibrations, random);
      MeanScale after = ScaleAverage.of(calibrations);
      assertThat(after.scale().arcsecPerUnit()).isCloseTo(before.scale().arcsecPerUnit(), TIGHT);
      assertThat(after.scale().uncertainty()).isCloseTo(before.scale().uncertainty(), TIGHT);
    }
  }

  @Test
  void meanLiesWithinItsValues() {
    for (int run = 0; run < 200; run++) {
      List<Calibration> calibrations = randomCalibrations(random);
      double least = Double.POSITIVE_INFINITY;
      double most = 0;
      for (Calibration calibration : calibrations) {
        double value = calibration.plateScale().arcsecPerUnit();
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
      double mean = ScaleAverage.of(calibrations).scale().arcsecPerUnit();
      assertThat(mean).isBetween(least * (1 - 1e-12), most * (1 + 1e-12));
    }
  }

  @Test
  void oneMoreLookAtTheSameSheetNeverMakesTheMeanWorse() {
    for (int run = 0; run < 200; run++) {
      Target sheet = randomSheet(random);
      List<Calibration> calibrations = new ArrayList<>();
      double before = Double.POSITIVE_INFINITY;
      double sharedBefore = -1;
      for (int i = 0; i < 8; i++) {
        calibrations.add(randomLook(sheet, random));
        PlateScale scale = ScaleAverage.of(calibrations).scale();
        double shared = scale.commonUncertainty() / scale.arcsecPerUnit();
        assertThat(scale.relativeUncertainty()).isLessThan(before * (1 + 1e-12));
        if (sharedBefore >= 0) {
          assertThat(shared).isCloseTo(sharedBefore, TIGHT);
        }
        before = scale.relativeUncertainty();
        sharedBefore = shared;
      }
    }
  }

  /** 4000 simulated rigs: the spread of the mean about the truth is what it says, within 5 %. */
  @Test
  void statedUncertaintyIsTheSpreadSeen() {
    Target sheetA = new Target(297, 0.3, 50, 0.05);
    Target sheetB = new Target(210, 0.2, 50, 0.05);
    double trueScale = 1.1;
    double sumOfSquares = 0;
    double stated = 0;
    int rigs = 4000;
    for (int rig = 0; rig < rigs; rig++) {
      double lengthErrorA = 0.3 * random.nextGaussian();
      double lengthErrorB = 0.2 * random.nextGaussian();
      double distanceError = 0.05 * random.nextGaussian();
      List<Calibration> calibrations = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        Target stated6 = i % 3 == 0 ? sheetB : sheetA;
        double lengthError = i % 3 == 0 ? lengthErrorB : lengthErrorA;
        Target real =
            new Target(
                stated6.lengthMm() + lengthError, 0.1, stated6.distanceM() + distanceError, 0.01);
        double px = real.angleArcsec() / trueScale + 1.2 * random.nextGaussian();
        calibrations.add(new Calibration(stated6, new ImageLength(px, 1.2, LengthUnit.PIXEL)));
      }
      PlateScale scale = ScaleAverage.of(calibrations).scale();
      double error = Math.log(scale.arcsecPerUnit() / trueScale);
      sumOfSquares += error * error;
      stated += scale.relativeUncertainty() / rigs;
    }
    assertThat(Math.sqrt(sumOfSquares / rigs)).isCloseTo(stated, Percentage.withPercentage(5));
  }

  private static List<Calibration> randomCalibrations(Random random) {
    List<Target> sheets = List.of(randomSheet(random), randomSheet(random));
    List<Calibration> calibrations = new ArrayList<>();
    int count = 1 + random.nextInt(12);
    for (int i = 0; i < count; i++) {
      calibrations.add(randomLook(sheets.get(random.nextInt(2)), random));
    }
    return calibrations;
  }

  private static Target randomSheet(Random random) {
    double length = 100 + 900 * random.nextDouble();
    double distance = 10 + 190 * random.nextDouble();
    return new Target(
        length,
        length * 0.01 * random.nextDouble(),
        distance,
        distance * 0.01 * random.nextDouble());
  }

  private static Calibration randomLook(Target sheet, Random random) {
    double px = sheet.angleArcsec() / 1.1 * (1 + 0.003 * random.nextGaussian());
    double uncertainty = px * (0.0005 + 0.005 * random.nextDouble());
    return new Calibration(sheet, new ImageLength(px, uncertainty, LengthUnit.PIXEL));
  }
}
