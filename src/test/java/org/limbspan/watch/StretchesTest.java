package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.SetupScale;
import org.limbspan.cycle.Sighted;
import org.limbspan.drift.AlertKind;
import org.limbspan.drift.CalibrationPoint;
import org.limbspan.drift.Figures;
import org.limbspan.drift.Finding;
import org.limbspan.drift.SetupHistory;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

class StretchesTest {

  private static final Instant STEP = Instant.parse("2025-12-06T15:30:00Z");
  private static final Instant BEFORE = STEP.minus(Duration.ofDays(10));
  private static final Instant AFTER = STEP.plus(Duration.ofDays(10));

  @Test
  void leavesAnUndisturbedSetupAsItIs() {
    Stretches stretches = new Stretches(List.of(setup(point(BEFORE, 0.002))), List.of());

    Observation placed = stretches.place(observation(AFTER));

    assertThat(placed).isEqualTo(observation(AFTER));
    assertThat(stretches.scales()).containsExactly(new SetupScale(0, 0.001));
  }

  @Test
  void partsASetupAtAStepAndGivesEachSideItsOwnCalibrations() {
    Stretches stretches =
        new Stretches(
            List.of(setup(point(BEFORE, 0.003), point(AFTER, -0.003))),
            List.of(finding(AlertKind.SCALE_STEP, new Figures.Step(0, 0, 0, 0, true))));

    Observation before = stretches.place(observation(BEFORE));
    Observation after = stretches.place(observation(AFTER));

    assertThat(before.setup()).isZero();
    assertThat(after.setup()).isEqualTo(1);
    assertThat(before.observedArcmin()).isCloseTo(31 * Math.exp(0.003), within(1e-9));
    assertThat(after.observedArcmin()).isCloseTo(31 * Math.exp(-0.003), within(1e-9));
    assertThat(stretches.scales()).extracting(SetupScale::setup).containsExactly(0, 1);
  }

  @Test
  void doesNotCountACalibrationThatWasFoundWrong() {
    Stretches stretches =
        new Stretches(
            List.of(setup(point(BEFORE, 0.0), point(AFTER, -0.02))),
            List.of(
                finding(
                    AlertKind.CALIBRATION_CONFLICT,
                    new Figures.Calibration(Optional.of(AFTER), -2, 0.1))));

    assertThat(stretches.place(observation(AFTER)).observedArcmin()).isEqualTo(31);
  }

  @Test
  void doesNotCountCalibrationsTakenWhileTheScaleDrifted() {
    Stretches stretches =
        new Stretches(
            List.of(setup(point(BEFORE, 0.001), point(AFTER, -0.004))),
            List.of(finding(AlertKind.SCALE_DRIFT, new Figures.Drift(0.1, 0.01, 1, 0.1))));

    assertThat(stretches.place(observation(AFTER)).observedArcmin())
        .isCloseTo(31 * Math.exp(0.001), within(1e-9));
  }

  private static SetupHistory setup(CalibrationPoint... points) {
    return new SetupHistory(0, Optional.empty(), Optional.empty(), List.of(points), List.of());
  }

  private static CalibrationPoint point(Instant at, double logScale) {
    return new CalibrationPoint(at, logScale, 0.001, 0.0005);
  }

  private static Finding finding(AlertKind kind, Figures figures) {
    return new Finding(
        kind,
        0,
        STEP,
        STEP,
        STEP,
        Optional.empty(),
        AFTER,
        0.6,
        0.02,
        1,
        List.of(),
        List.of(),
        figures);
  }

  private static Observation observation(Instant at) {
    return new Observation(
        at,
        Axis.HORIZONTAL,
        31,
        0.001,
        SkyFixture.sky().moonAt(at, new Site(46, 7, 500)),
        0,
        Sighted.NONE);
  }
}
