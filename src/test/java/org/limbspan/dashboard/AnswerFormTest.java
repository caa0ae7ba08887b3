package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.sky.Axis;
import org.limbspan.watch.AnswerCause;
import org.limbspan.watch.NewAnswer;
import org.limbspan.watch.Remedy;

class AnswerFormTest {

  private static final RigTime VIENNA = new RigTime(ZoneId.of("Europe/Vienna"));
  private static final Instant NOW = Instant.parse("2024-07-01T12:00:00Z");

  @ParameterizedTest
  @CsvSource({
    "2024-06-20 22:00, 2024-06-20T20:00:00Z",
    "2024-06-20T22:00, 2024-06-20T20:00:00Z",
    "2024-01-20,       2024-01-20T11:00:00Z",
  })
  void takesTimesOfTheRigsOwnZone(String changedAt, Instant expected) {
    AnswerForm form = new AnswerForm("zoom-moved", changedAt, " bumped ", null);
    assertThat(form.complaints(VIENNA, NOW)).isEmpty();
    assertThat(form.answer(VIENNA))
        .isEqualTo(new NewAnswer(AnswerCause.ZOOM_MOVED, "bumped", expected));
  }

  @Test
  void needsNothingBesideACause() {
    assertThat(new AnswerForm("weather", "", "", "keep").complaints(VIENNA, NOW)).isEmpty();
    assertThat(AnswerForm.EMPTY.complaints(VIENNA, NOW)).containsOnlyKeys("cause");
  }

  @Test
  void putsTheReadingsRightAsChosen() {
    assertThat(new AnswerForm("wrong-entry", "", "", "withdraw").answer(VIENNA).remedy())
        .isEqualTo(new Remedy.Withdraw());
    assertThat(new AnswerForm("wrong-entry", "", "", "vertical").answer(VIENNA).remedy())
        .isEqualTo(new Remedy.Relabel(Axis.VERTICAL));
    assertThat(new AnswerForm("weather", "", "", "keep").answer(VIENNA).remedy())
        .isEqualTo(Remedy.NONE);
  }

  @Test
  void complainsOfEachFieldThatCannotBeTaken() {
    assertThat(
            new AnswerForm("gremlins", "yesterday", "x".repeat(2001), "burn")
                .complaints(VIENNA, NOW))
        .containsOnlyKeys("cause", "changedAt", "note", "readings");
    assertThat(new AnswerForm("weather", "2024-07-02 10:00", "", "").complaints(VIENNA, NOW))
        .containsEntry("changedAt", "Expected a time that has passed.");
  }
}
