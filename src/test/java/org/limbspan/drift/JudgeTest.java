package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

class JudgeTest {

  private final Judge judge = new Judge(SkyFixture.sky());
  private final Random random = new Random(3);

  private double noise() {
    return 0.8 * Histories.STATED * random.nextGaussian();
  }

  private static CalibrationPoint calibration(long day, double logScale) {
    Instant at = Histories.START.plus(Duration.ofDays(day)).minus(Duration.ofHours(4));
    return new CalibrationPoint(at, logScale, 0.0011, 0.0005);
  }

  @Test
  void isSilentWhereNothingIsKnown() {
    assertThat(judge.judge(new RigHistory(Histories.SITE, ZoneOffset.UTC, List.of()))).isEmpty();
    assertThat(judge.judge(Histories.rig(List.of(), List.of()))).isEmpty();
    assertThat(judge.judge(Histories.rig(List.of(calibration(0, 0)), List.of()))).isEmpty();
    assertThat(judge.judge(Histories.rig(List.of(), Histories.pairs(1, i -> 0.3)))).isEmpty();
  }

  @Test
  void waitsForADozenReadings() {
    assertThat(judge.judge(Histories.rig(List.of(), Histories.pairs(11, i -> i < 6 ? 0 : 0.05))))
        .isEmpty();
    assertThat(judge.judge(Histories.rig(List.of(), Histories.pairs(12, i -> i < 6 ? 0 : 0.05))))
        .extracting(Finding::kind)
        .containsExactly(AlertKind.SCALE_STEP);
  }

  /** One reading astray is no change, however far. */
  @ParameterizedTest
  @ValueSource(doubles = {0.005, 0.02, 0.3, -0.9})
  void doesNotBelieveOneReading(double astray) {
    List<Observation> readings = Histories.pairs(60, i -> i == 50 ? astray : noise());
    for (int n = 49; n <= 60; n++) {
      assertThat(judge.judge(Histories.rig(List.of(), readings.subList(0, n)))).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, -0.02, 0.3})
  void believesTwoThatAgree(double step) {
    List<Observation> readings = Histories.pairs(60, i -> (i >= 50 ? step : 0) + noise());
    assertThat(judge.judge(Histories.rig(List.of(), readings.subList(0, 51)))).isEmpty();
    assertThat(judge.judge(Histories.rig(List.of(), readings.subList(0, 52))))
        .extracting(Finding::evidenceAt)
        .containsExactly(readings.get(51).takenAt());
    Finding found = judge.judge(Histories.rig(List.of(), readings)).get(0);
    assertThat(found.evidence())
        .containsExactly(readings.get(50).takenAt(), readings.get(51).takenAt());
    assertThat(found.sizePercent() - 100 * step).isBetween(-0.1, 0.1);
    assertThat(found.onsetFrom()).isAfterOrEqualTo(readings.get(47).takenAt());
    assertThat(found.onsetTo()).isBeforeOrEqualTo(readings.get(50).takenAt());
  }

  /** Found by a search over random histories: the likeliest onset lay in a tail of the interval. */
  @Test
  void tellsOnsetsWithinTheirIntervalsWhereNothingFits() {
    SplittableRandom anything = new SplittableRandom(99);
    int count = 60 + anything.nextInt(140);
    anything.nextInt(100);
    Site site = new Site(40.1, -3.2, 600);
    List<Observation> readings = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      Instant at = Instant.parse("2015-01-03T00:00:00Z").plus(Duration.ofMinutes(350L * i));
      readings.add(
          new Observation(
              at,
              Axis.HORIZONTAL,
              30 + 3 * anything.nextDouble(),
              0.001,
              SkyFixture.sky().moonAt(at, site),
              0,
              Sighted.NONE));
    }
    SetupHistory setup =
        new SetupHistory(0, Optional.empty(), Optional.empty(), List.of(), readings);
    List<Finding> findings = judge.judge(new RigHistory(site, ZoneOffset.UTC, List.of(setup)));
    assertThat(findings)
        .isNotEmpty()
        .noneMatch(finding -> finding.onsetAt().isBefore(finding.onsetFrom()))
        .noneMatch(finding -> finding.onsetAt().isAfter(finding.onsetTo()));
  }

  @Test
  void goesOnAfterAChange() {
    List<Observation> readings =
        Histories.pairs(120, i -> (i < 40 ? 0 : i < 80 ? 0.006 : -0.01) + noise());
    List<Finding> findings = judge.judge(Histories.rig(List.of(), readings));
    assertThat(findings)
        .extracting(Finding::kind)
        .containsExactly(AlertKind.SCALE_STEP, AlertKind.SCALE_STEP);
    assertThat(findings.get(1).sizePercent()).isBetween(-1.7, -1.5);
  }

  @Test
  void tellsWhenADriftEnds() {
    List<Observation> readings =
        Histories.pairs(160, i -> 0.0004 * Math.max(0, Math.min(i, 90) - 40) + noise());
    List<Finding> findings = judge.judge(Histories.rig(List.of(), readings));
    assertThat(findings).extracting(Finding::kind).containsExactly(AlertKind.SCALE_DRIFT);
    Instant end = findings.get(0).until().orElseThrow();
    assertThat(end).isBetween(readings.get(84).takenAt(), readings.get(96).takenAt());
    // 0.0004 a reading, two readings in three days
    assertThat(findings.get(0).sizePercent()).isBetween(0.76, 0.84);
  }

  /** After a step the calibrations differ as well: that is the step, and speaks for it. */
  @Test
  void takesLaterCalibrationsForPartOfAStep() {
    List<CalibrationPoint> calibrations = new ArrayList<>();
    for (int day = 0; day < 90; day += 15) {
      calibrations.add(calibration(day, day < 60 ? 0 : -0.008));
    }
    List<Observation> readings = Histories.pairs(60, i -> (i < 40 ? 0 : 0.008) + noise());
    List<Finding> findings = judge.judge(Histories.rig(calibrations, readings));
    assertThat(findings).extracting(Finding::kind).containsExactly(AlertKind.SCALE_STEP);
    Figures.Step step = (Figures.Step) findings.get(0).figures();
    assertThat(step.supportedByCalibration()).isTrue();
  }

  /** A conflict with the Moon: all calibrations agree, and none with it. */
  @Test
  void namesATargetThatIsWrong() {
    List<CalibrationPoint> calibrations = List.of(calibration(0, 0), calibration(20, 0));
    List<Finding> findings =
        judge.judge(Histories.rig(calibrations, Histories.pairs(40, i -> 0.03 + noise())));
    assertThat(findings).extracting(Finding::kind).containsExactly(AlertKind.CALIBRATION_CONFLICT);
    assertThat(findings.get(0).likelyCauses().get(0).cause()).isEqualTo(Cause.TARGET_WRONG);
  }

  /** A scale that nobody measured cannot be in conflict. */
  @Test
  void acceptsAnyLevelWithoutCalibrations() {
    assertThat(judge.judge(Histories.rig(List.of(), Histories.pairs(40, i -> 0.7 + noise()))))
        .isEmpty();
  }

  @Test
  void keepsTheProbabilitiesOfTheCausesWithinOne() {
    for (double step : new double[] {0.003, 0.005, 0.02}) {
      List<Observation> readings = Histories.pairs(60, i -> (i >= 40 ? step : 0) + noise());
      for (Finding finding : judge.judge(Histories.rig(List.of(), readings))) {
        assertThat(finding.likelyCauses().stream().mapToDouble(LikelyCause::probability).sum())
            .isLessThanOrEqualTo(1 + 1e-9);
        assertThat(finding.likelyCauses())
            .isSortedAccordingTo((a, b) -> Double.compare(b.probability(), a.probability()));
      }
    }
  }

  /** What goes on in the next setup is one thing, and is told once. */
  @ParameterizedTest
  @CsvSource({
    "near-moon-world,        2023-06-01T00:00:00Z",
    "vertical-as-horizontal, 2023-12-01T00:00:00Z",
    "local-time-as-utc,      2023-12-01T00:00:00Z"
  })
  void tellsOnceWhatGoesOnInTheNextSetup(String folder, Instant parted) {
    RigHistory rig = SimulatedHistory.of(folder).rig();
    RigHistory inTwo = parted(rig, parted);
    assertThat(judge.judge(inTwo)).hasSize(1);
    RunningJudge running = new RunningJudge(SkyFixture.sky());
    running.judge(inTwo);
    assertThat(running.judge(inTwo)).isEqualTo(judge.judge(inTwo));
  }

  private static RigHistory parted(RigHistory rig, Instant at) {
    SetupHistory whole = rig.setups().get(0);
    return new RigHistory(
        rig.site(),
        rig.zone(),
        List.of(
            new SetupHistory(
                0,
                whole.from(),
                Optional.of(at),
                whole.calibrations().stream().filter(c -> c.takenAt().isBefore(at)).toList(),
                whole.observations().stream().filter(o -> o.takenAt().isBefore(at)).toList()),
            new SetupHistory(
                1,
                Optional.of(at),
                whole.to(),
                whole.calibrations().stream().filter(c -> !c.takenAt().isBefore(at)).toList(),
                whole.observations().stream().filter(o -> !o.takenAt().isBefore(at)).toList())));
  }
}
