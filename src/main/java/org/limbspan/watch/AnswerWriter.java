package org.limbspan.watch;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.limbspan.rig.NewSetup;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Enters an answer as a fact and does what follows from it. */
@Component
class AnswerWriter {

  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.ENGLISH);

  private final Rigs rigs;
  private final AlertAnswers answers;
  private final ReadingRemedies remedies;
  private final ApplicationEventPublisher events;

  AnswerWriter(
      Rigs rigs, AlertAnswers answers, ReadingRemedies remedies, ApplicationEventPublisher events) {
    this.rigs = rigs;
    this.answers = answers;
    this.remedies = remedies;
    this.events = events;
  }

  Alert write(Rig rig, Alert alert, NewAnswer answer, Instant now) {
    rigs.lock(rig.id());
    AlertReply reply =
        new AlertReply(
            answer.cause().label(),
            answer.note(),
            answer.changedAt(),
            consequences(rig, alert, answer).orElse(null),
            now);
    answers.add(rig.id(), alert.id(), reply);
    rigs.recordChange(rig.id());
    events.publishEvent(new AlertAnswered(rig.id(), alert.id()));
    List<AlertReply> replies = new ArrayList<>(alert.answers());
    replies.add(reply);
    return alert.with(alert.id(), alert.raisedAt(), null, AlertState.ANSWERED, replies);
  }

  /** The readings are put right first: the setup that the alert names is that of before. */
  private Optional<String> consequences(Rig rig, Alert alert, NewAnswer answer) {
    Instant changedAt = answer.changedAt() == null ? alert.onsetAt() : answer.changedAt();
    String reason = answer.note() == null ? answer.cause().words() : answer.note();
    return Stream.of(
            remedies.apply(rig, alert, changedAt, answer.remedy(), reason),
            opensSetup(answer)
                ? Optional.of(openSetup(rig, alert, changedAt))
                : Optional.<String>empty())
        .flatMap(Optional::stream)
        .reduce((first, second) -> first + " " + second);
  }

  private static boolean opensSetup(NewAnswer answer) {
    return answer.cause() == AnswerCause.ZOOM_MOVED;
  }

  private String openSetup(Rig rig, Alert alert, Instant changedAt) {
    rigs.openSetup(
        rig,
        new NewSetup(
            changedAt, "opened by the answer to the alert " + alert.kind(), OnConflict.SUPERSEDE));
    return "A setup was opened at "
        + MINUTE.format(changedAt.atZone(rig.timeZone()))
        + " ("
        + rig.timeZone()
        + "). Until it has a calibration its scale is taken from the computed Moon.";
  }
}
