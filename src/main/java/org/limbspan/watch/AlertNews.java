package org.limbspan.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * What a judgement changed about the alerts of a rig.
 *
 * <p>An alert is the same as before by its kind and onset, as for the {@link Reconciler}: the id of
 * an unanswered one changes when earlier readings arrive that prove it.
 */
final class AlertNews {

  private AlertNews() {}

  /** Events in the order in which they are told: what is gone, what is new, what is settled. */
  static List<Object> between(
      long rigId, List<AlertRepository.Kept> before, List<AlertRepository.Kept> after) {
    List<Alert> old = before.stream().map(AlertRepository.Kept::alert).toList();
    List<Alert> now = after.stream().map(AlertRepository.Kept::alert).toList();
    List<Object> news = new ArrayList<>();
    old.stream()
        .filter(alert -> isOf(alert, AlertState.RAISED) && isMissing(alert, now))
        .forEach(alert -> news.add(new AlertWithdrawn(rigId, alert)));
    now.stream()
        .filter(alert -> isOf(alert, AlertState.RAISED) && isMissing(alert, old))
        .forEach(alert -> news.add(new AlertRaised(rigId, alert)));
    now.stream()
        .filter(alert -> isOf(alert, AlertState.SETTLED))
        .filter(alert -> unsettled(old).anyMatch(each -> Objects.equals(each.id(), alert.id())))
        .forEach(alert -> news.add(new AlertSettled(rigId, alert)));
    return List.copyOf(news);
  }

  private static boolean isMissing(Alert alert, List<Alert> among) {
    return among.stream().noneMatch(other -> Reconciler.isSame(alert, other));
  }

  private static Stream<Alert> unsettled(List<Alert> alerts) {
    return alerts.stream().filter(alert -> !isOf(alert, AlertState.SETTLED));
  }

  private static boolean isOf(Alert alert, AlertState state) {
    return alert.state().equals(state.label());
  }
}
