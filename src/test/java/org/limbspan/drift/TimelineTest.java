package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.limbspan.drift.Histories.START;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.cycle.Observation;

class TimelineTest {

  private static CalibrationPoint calibration(Instant at) {
    return new CalibrationPoint(at, 0.002, 0.001, 0.0005);
  }

  @Test
  void putsACalibrationBeforeAReadingOfTheSameInstant() {
    List<Fact> facts =
        Timeline.of(
            Histories.setup(List.of(calibration(START)), List.of(Histories.reading(START, 0.003))));
    assertThat(facts).extracting(Fact::isReading).containsExactly(false, true);
    assertThat(facts.get(0).value).isEqualTo(-0.002);
    assertThat(facts.get(1).value).isCloseTo(0.003, within(1e-12));
  }

  @Test
  void countsWhatIsThereTwiceOnce() {
    Observation reading = Histories.reading(START, 0);
    assertThat(
            Timeline.of(
                Histories.setup(
                    List.of(calibration(START), calibration(START)), List.of(reading, reading))))
        .hasSize(2);
  }

  @Test
  void tellsNightsAndGaps() {
    List<Fact> facts =
        Timeline.of(
            Histories.setup(
                List.of(calibration(START.plus(Duration.ofDays(9)))),
                List.of(
                    Histories.reading(START.plus(Duration.ofHours(12)), 0),
                    Histories.reading(START.plus(Duration.ofHours(11)), 0),
                    Histories.reading(START, 0))));
    assertThat(facts).extracting(fact -> fact.opensNight).containsExactly(true, false, true, false);
    assertThat(facts.get(0).gapDays).isZero();
    assertThat(facts.get(2).gapDays).isCloseTo(1.0 / 24, within(1e-9));
    assertThat(facts.get(3).gapDays).isCloseTo(8.5, within(1e-9));
  }

  @Test
  void isEmptyWhereNothingIsKnown() {
    assertThat(Timeline.of(Histories.setup(List.of(), List.of()))).isEmpty();
  }
}
