package org.limbspan.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Brings the alerts of a fresh judgement together with those that were there.
 *
 * <p>One that is found again keeps the time at which it was raised and, once answered, its id. One
 * that is found no more is dropped if nobody answered it, as if it had never been, so that the
 * order in which facts arrive leaves no trace; an answered one stays as it was at its answer. It is
 * settled once enough readings later than its change agree: that is, while no alert stands that
 * began with them.
 */
final class Reconciler {

  /** So many later readings without a new alert settle an answered one. */
  static final int SETTLING_READINGS = 6;

  private final List<Instant> readings;
  private final Instant now;

  /**
   * @param readings instants of all readings of the rig
   * @param now when this judgement is made
   */
  Reconciler(List<Instant> readings, Instant now) {
    this.readings = readings;
    this.now = now;
  }

  List<AlertRepository.Kept> reconcile(
      List<Alert> found, List<AlertRepository.Kept> before, Map<UUID, List<AlertReply>> answers) {
    List<AlertRepository.Kept> result = new ArrayList<>();
    for (Alert alert : found) {
      Optional<Alert> known = known(alert, before, answers);
      UUID id = known.map(Alert::id).filter(answers::containsKey).orElse(alert.id());
      Instant raisedAt = known.map(Alert::raisedAt).orElse(alert.raisedAt());
      List<AlertReply> replies = answers.getOrDefault(id, List.of());
      AlertState state = state(alert, replies, found);
      @Nullable Instant settledAt = settledAt(state, known.orElse(alert));
      result.add(
          new AlertRepository.Kept(alert.with(id, raisedAt, settledAt, state, replies), true));
    }
    Set<UUID> taken = result.stream().map(AlertRepository.Kept::id).collect(Collectors.toSet());
    for (AlertRepository.Kept old : before) {
      List<AlertReply> replies = answers.getOrDefault(old.id(), List.of());
      if (!replies.isEmpty() && !taken.contains(old.id())) {
        Alert alert = old.alert();
        AlertState state = state(alert, replies, found);
        @Nullable Instant settledAt = settledAt(state, alert);
        result.add(
            new AlertRepository.Kept(
                alert.with(alert.id(), alert.raisedAt(), settledAt, state, replies), false));
      }
    }
    return result;
  }

  private @Nullable Instant settledAt(AlertState state, Alert before) {
    if (state != AlertState.SETTLED) {
      return null;
    }
    return before.settledAt() == null ? now : before.settledAt();
  }

  /** The alert of before that is this one: an answered one rather than another. */
  private static Optional<Alert> known(
      Alert alert, List<AlertRepository.Kept> before, Map<UUID, List<AlertReply>> answers) {
    List<Alert> matching =
        before.stream().map(AlertRepository.Kept::alert).filter(old -> isSame(old, alert)).toList();
    return Stream.concat(
            matching.stream().filter(old -> answers.containsKey(old.id())), matching.stream())
        .findFirst();
  }

  /** Whether two are of one kind and may have begun at the same time. */
  static boolean isSame(Alert one, Alert other) {
    return one.kind().equals(other.kind())
        && !one.onsetFrom().isAfter(other.onsetTo())
        && !other.onsetFrom().isAfter(one.onsetTo());
  }

  private AlertState state(Alert alert, List<AlertReply> replies, List<Alert> found) {
    if (replies.isEmpty()) {
      return AlertState.RAISED;
    }
    AlertReply last = replies.get(replies.size() - 1);
    Instant changedAt = last.changedAt() == null ? alert.evidenceAt() : last.changedAt();
    Instant since = changedAt.isAfter(alert.evidenceAt()) ? changedAt : alert.evidenceAt();
    boolean disturbed =
        found.stream().anyMatch(other -> !isSame(other, alert) && other.onsetTo().isAfter(since));
    long later = readings.stream().filter(at -> at.isAfter(since)).count();
    return !disturbed && later >= SETTLING_READINGS ? AlertState.SETTLED : AlertState.ANSWERED;
  }
}
