package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ReconcilerTest {

  private static final Instant ONSET = Instant.parse("2026-03-01T20:00:00Z");
  private static final Instant FIRST_SEEN = Instant.parse("2026-03-09T08:00:00Z");
  private static final Instant SEEN_AGAIN = Instant.parse("2026-03-20T08:00:00Z");
  private static final AlertReply WEATHER =
      new AlertReply("weather", null, null, null, Instant.parse("2026-03-10T08:00:00Z"));

  @Test
  void keepsTheTimeAtWhichAnAlertWasFirstRaised() {
    Alert before = alert("a", ONSET, FIRST_SEEN);
    Alert found = alert("b", ONSET.plus(Duration.ofHours(5)), SEEN_AGAIN);

    List<AlertRepository.Kept> result = reconcile(found, before, Map.of());

    assertThat(result).hasSize(1);
    assertThat(result.get(0).alert().raisedAt()).isEqualTo(FIRST_SEEN);
    assertThat(result.get(0).id()).isEqualTo(found.id());
  }

  @Test
  void keepsTheIdOfAnAnsweredAlert() {
    Alert before = alert("a", ONSET, FIRST_SEEN);
    Alert found = alert("b", ONSET, SEEN_AGAIN);

    AlertRepository.Kept kept =
        reconcile(found, before, Map.of(before.id(), List.of(WEATHER))).get(0);

    assertThat(kept.id()).isEqualTo(before.id());
    assertThat(kept.alert().state()).isEqualTo("answered");
    assertThat(kept.alert().answers()).containsExactly(WEATHER);
  }

  @Test
  void dropsAnUnansweredAlertThatIsFoundNoMore() {
    Alert before = alert("a", ONSET, FIRST_SEEN);

    assertThat(
            new Reconciler(List.of(), SEEN_AGAIN)
                .reconcile(List.of(), List.of(new AlertRepository.Kept(before, true)), Map.of()))
        .isEmpty();
  }

  @Test
  void settlesAnAnsweredAlertOnceSixLaterReadingsAgree() {
    Alert before = alert("a", ONSET, FIRST_SEEN);
    List<AlertRepository.Kept> kept = List.of(new AlertRepository.Kept(before, true));
    Map<UUID, List<AlertReply>> answers = Map.of(before.id(), List.of(WEATHER));

    assertThat(
            state(new Reconciler(readingsAfter(5), SEEN_AGAIN).reconcile(List.of(), kept, answers)))
        .isEqualTo("answered");
    assertThat(
            state(new Reconciler(readingsAfter(6), SEEN_AGAIN).reconcile(List.of(), kept, answers)))
        .isEqualTo("settled");
  }

  @Test
  void keepsTheTimeAtWhichAnAlertWasFirstFoundSettled() {
    Alert before = alert("a", ONSET, FIRST_SEEN);
    Map<UUID, List<AlertReply>> answers = Map.of(before.id(), List.of(WEATHER));
    Reconciler first = new Reconciler(readingsAfter(6), SEEN_AGAIN);
    List<AlertRepository.Kept> settled =
        first.reconcile(List.of(), List.of(new AlertRepository.Kept(before, true)), answers);
    assertThat(settled.get(0).alert().settledAt()).isEqualTo(SEEN_AGAIN);

    Reconciler later = new Reconciler(readingsAfter(9), SEEN_AGAIN.plus(Duration.ofDays(5)));
    assertThat(later.reconcile(List.of(), settled, answers).get(0).alert().settledAt())
        .isEqualTo(SEEN_AGAIN);
  }

  @Test
  void doesNotSettleWhileALaterAlertStands() {
    Alert before = alert("a", ONSET, FIRST_SEEN);
    Alert later = alert("c", ONSET.plus(Duration.ofDays(20)), SEEN_AGAIN);

    List<AlertRepository.Kept> result =
        new Reconciler(readingsAfter(12), SEEN_AGAIN)
            .reconcile(
                List.of(later),
                List.of(new AlertRepository.Kept(before, true)),
                Map.of(before.id(), List.of(WEATHER)));

    assertThat(result).extracting(each -> each.alert().state()).containsOnly("raised", "answered");
  }

  private static List<AlertRepository.Kept> reconcile(
      Alert found, Alert before, Map<UUID, List<AlertReply>> answers) {
    return new Reconciler(List.of(), SEEN_AGAIN)
        .reconcile(List.of(found), List.of(new AlertRepository.Kept(before, true)), answers);
  }

  private static String state(List<AlertRepository.Kept> kept) {
    return kept.get(0).alert().state();
  }

  private static List<Instant> readingsAfter(int count) {
    return IntStream.rangeClosed(1, count)
        .mapToObj(day -> ONSET.plus(Duration.ofDays(3 + day)))
        .toList();
  }

  private static Alert alert(String id, Instant onset, Instant raisedAt) {
    Explanation words = new Explanation("", "", "", "", "", "", "");
    return new Alert(
        UUID.nameUUIDFromBytes(id.getBytes(java.nio.charset.StandardCharsets.UTF_8)),
        "scale-step",
        "raised",
        0,
        onset,
        onset.minus(Duration.ofDays(1)),
        onset.plus(Duration.ofDays(1)),
        null,
        raisedAt,
        null,
        onset.plus(Duration.ofDays(2)),
        0.5,
        0.05,
        0.999,
        "",
        words,
        List.of(),
        List.of(),
        List.of());
  }
}
