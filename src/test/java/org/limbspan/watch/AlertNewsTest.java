package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class AlertNewsTest {

  private static final long RIG = 7;
  private static final Instant ONSET = Instant.parse("2026-03-01T20:00:00Z");

  private final Alert raised = alert("a", ONSET, AlertState.RAISED);

  @Test
  void tellWhatIsFoundForTheFirstTime() {
    assertThat(news(List.of(), List.of(raised))).containsExactly(new AlertRaised(RIG, raised));
    assertThat(news(List.of(raised), List.of(raised))).isEmpty();
  }

  @Test
  void areNoneOfAnAlertThatIsProvedByAnEarlierReading() {
    Alert sooner = alert("b", ONSET.plus(Duration.ofHours(3)), AlertState.RAISED);
    assertThat(news(List.of(raised), List.of(sooner))).isEmpty();
  }

  @Test
  void tellWhatIsFoundNoMore() {
    assertThat(news(List.of(raised), List.of())).containsExactly(new AlertWithdrawn(RIG, raised));
  }

  @Test
  void areNoneWhenAnAnswerIsEntered() {
    assertThat(news(List.of(raised), List.of(alert("a", ONSET, AlertState.ANSWERED)))).isEmpty();
  }

  @Test
  void tellOnceThatAnAlertIsSettled() {
    Alert settled = alert("a", ONSET, AlertState.SETTLED);
    assertThat(news(List.of(alert("a", ONSET, AlertState.ANSWERED)), List.of(settled)))
        .containsExactly(new AlertSettled(RIG, settled));
    assertThat(news(List.of(raised), List.of(settled)))
        .as("answered and settled within one round")
        .containsExactly(new AlertSettled(RIG, settled));
    assertThat(news(List.of(settled), List.of(settled))).isEmpty();
    assertThat(news(List.of(), List.of(settled))).as("taken in from an archive").isEmpty();
  }

  @Test
  void tellWhatIsGoneBeforeWhatIsNew() {
    Alert other = alert("c", ONSET.plus(Duration.ofDays(90)), AlertState.RAISED);
    assertThat(news(List.of(raised), List.of(other)))
        .containsExactly(new AlertWithdrawn(RIG, raised), new AlertRaised(RIG, other));
  }

  private static List<Object> news(List<Alert> before, List<Alert> after) {
    return AlertNews.between(RIG, kept(before), kept(after));
  }

  private static List<AlertRepository.Kept> kept(List<Alert> alerts) {
    return alerts.stream().map(alert -> new AlertRepository.Kept(alert, true)).toList();
  }

  private static Alert alert(String name, Instant onset, AlertState state) {
    return new Alert(
        UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)),
        "scale-step",
        state.label(),
        0,
        onset,
        onset.minus(Duration.ofDays(2)),
        onset.plus(Duration.ofDays(2)),
        null,
        onset.plus(Duration.ofDays(9)),
        null,
        onset.plus(Duration.ofDays(8)),
        0.5,
        0.1,
        0.99,
        "",
        new Explanation("", "", "", "", "", "", ""),
        List.of(),
        List.of(),
        List.of());
  }
}
