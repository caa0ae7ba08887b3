package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.limbspan.drift.AlertKind;
import org.limbspan.drift.Cause;
import org.limbspan.drift.Figures;
import org.limbspan.drift.Finding;
import org.limbspan.drift.LikelyCause;

class FindingWordsTest {

  private static final Instant FROM = Instant.parse("2024-06-17T17:00:00Z");
  private static final Instant ONSET = Instant.parse("2024-06-20T13:00:00Z");
  private static final Instant TO = Instant.parse("2024-06-23T23:30:00Z");
  private final FindingWords words = new FindingWords(ZoneId.of("Europe/Madrid"));

  @Test
  void tellsAStepInNumbersDatesAndLocalTime() {
    Explanation step =
        words.explain(
            finding(AlertKind.SCALE_STEP, new Figures.Step(-0.3, 0.02, 0.2, 0.02, false)));

    assertThat(step.what()).isEqualTo("From one reading to the next every disc became larger.");
    assertThat(step.howMuch()).isEqualTo("By +0.488 percent (standard uncertainty 0.019).");
    assertThat(step.since())
        .isEqualTo(
            "Since about 20 June 2024 (between 17 June 2024, 19:00 and 24 June 2024, 01:30, 95 in"
                + " 100).");
    assertThat(step.shownBy())
        .isEqualTo("Shown by 2 entries from 20 June 2024, 15:00 to 24 June 2024, 01:30.");
    assertThat(step.likelyCauses()).contains("zoom or focus ring was touched", "97 in 100");
    assertThat(step.whatToDo()).startsWith("Tonight: do not touch the rig");
  }

  @Test
  void tellsADriftByItsRateAndItsWhole() {
    Explanation drift =
        words.explain(finding(AlertKind.SCALE_DRIFT, new Figures.Drift(0.488, 0.019, 0.83, 0.03)));

    assertThat(drift.howMuch())
        .isEqualTo(
            "By +0.488 percent in 30 days (standard uncertainty 0.019), so far +0.830 percent"
                + " (standard uncertainty 0.030) in all.");
  }

  @Test
  void tellsAClockByItsHours() {
    Explanation clock =
        words.explain(finding(AlertKind.CLOCK_SUSPECT, new Figures.Clock(5.5, 12, -40)));

    assertThat(clock.howMuch())
        .isEqualTo(
            "The logged times fit if they are +5.5 hours off. 12 of them would have been taken"
                + " below the horizon.");
  }

  @ParameterizedTest
  @EnumSource(AlertKind.class)
  void leavesNoQuestionWithoutAnAnswer(AlertKind kind) {
    Explanation explanation = words.explain(finding(kind, new Figures.Departure(1.2, 0.05)));

    assertThat(
            List.of(
                explanation.what(),
                explanation.howMuch(),
                explanation.since(),
                explanation.howSure(),
                explanation.shownBy(),
                explanation.likelyCauses(),
                explanation.whatToDo()))
        .allSatisfy(sentence -> assertThat(sentence).isNotBlank().endsWith("."));
  }

  private static Finding finding(AlertKind kind, Figures figures) {
    return new Finding(
        kind,
        0,
        ONSET,
        FROM,
        TO,
        Optional.empty(),
        TO,
        0.488,
        0.019,
        0.9999,
        List.of(new LikelyCause(Cause.ZOOM_MOVED, 0.97), new LikelyCause(Cause.CHANCE, 0.004)),
        List.of(ONSET, TO),
        figures);
  }
}
