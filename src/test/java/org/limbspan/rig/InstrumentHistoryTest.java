package org.limbspan.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.Target;
import org.limbspan.sky.Site;

class InstrumentHistoryTest {

  private static final Instant FEBRUARY = Instant.parse("2026-02-01T00:00:00Z");
  private static final Instant MARCH = Instant.parse("2026-03-01T00:00:00Z");

  private final List<Setup> setups =
      List.of(
          new Setup(10, 0, Optional.empty(), Optional.of(FEBRUARY), null),
          new Setup(12, 1, Optional.of(FEBRUARY), Optional.of(MARCH), null),
          new Setup(11, 2, Optional.of(MARCH), Optional.empty(), null));

  @Test
  void belongsToTheLaterSetupFromItsVeryFirstInstant() {
    InstrumentHistory history = history();
    assertThat(history.setupAt(FEBRUARY.minusNanos(1000)).number()).isZero();
    assertThat(history.setupAt(FEBRUARY).number()).isEqualTo(1);
    assertThat(history.setupAt(MARCH.minusNanos(1000)).number()).isEqualTo(1);
    assertThat(history.setupAt(MARCH).number()).isEqualTo(2);
    assertThat(history.setupAt(Instant.MIN).number()).isZero();
    assertThat(history.setupAt(Instant.MAX).number()).isEqualTo(2);
  }

  @Test
  void averagesTheCalibrationsOfEachSetupOnItsOwn() {
    InstrumentHistory history =
        history(calibration(FEBRUARY, 1, 1100), calibration(MARCH, 2, 1200));
    double first = history.scaleOf(setups.get(1)).orElseThrow().scale().arcsecPerUnit();
    double second = history.scaleOf(setups.get(2)).orElseThrow().scale().arcsecPerUnit();
    assertThat(first / second).isBetween(1200.0 / 1100 - 1e-12, 1200.0 / 1100 + 1e-12);
    assertThat(history.scaleOf(setups.get(0))).isEmpty();
  }

  private InstrumentHistory history(RecordedCalibration... calibrations) {
    Rig rig =
        new Rig(
            1,
            "invented",
            "Invented",
            new Site(48.2, 16.4, 170),
            ZoneId.of("Europe/Vienna"),
            null,
            FEBRUARY);
    return new InstrumentHistory(rig, setups, List.of(calibrations));
  }

  private static RecordedCalibration calibration(Instant at, int setup, double px) {
    return new RecordedCalibration(
        setup,
        at,
        setup,
        new Calibration(
            new Target(297, 0.15, 50, 0.02), new ImageLength(px, px / 1000, LengthUnit.PIXEL)),
        null,
        at);
  }
}
