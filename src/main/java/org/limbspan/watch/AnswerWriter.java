package org.limbspan.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.NewSetup;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Component;

/** Enters an answer as a fact and does what follows from it. */
@Component
class AnswerWriter {

  private final Rigs rigs;
  private final AlertAnswers answers;

  AnswerWriter(Rigs rigs, AlertAnswers answers) {
    this.rigs = rigs;
    this.answers = answers;
  }

  Alert write(Rig rig, Alert alert, NewAnswer answer, Instant now) {
    rigs.lock(rig.id());
    @Nullable Instant changedAt = changedAt(alert, answer);
    AlertReply reply =
        new AlertReply(
            answer.cause().label(),
            answer.note(),
            changedAt,
            consequence(rig, alert, answer, changedAt),
            now);
    answers.add(rig.id(), alert.id(), reply);
    rigs.recordChange(rig.id());
    List<AlertReply> replies = new ArrayList<>(alert.answers());
    replies.add(reply);
    return alert.with(alert.id(), alert.raisedAt(), AlertState.ANSWERED, replies);
  }

  private static @Nullable Instant changedAt(Alert alert, NewAnswer answer) {
    return answer.changedAt() == null && answer.cause() == AnswerCause.ZOOM_MOVED
        ? alert.onsetAt()
        : answer.changedAt();
  }

  private @Nullable String consequence(
      Rig rig, Alert alert, NewAnswer answer, @Nullable Instant changedAt) {
    if (answer.cause() != AnswerCause.ZOOM_MOVED || changedAt == null) {
      return null;
    }
    rigs.openSetup(
        rig,
        new NewSetup(
            changedAt, "opened by the answer to the alert " + alert.kind(), OnConflict.SUPERSEDE));
    return "A setup was opened at "
        + changedAt
        + ". It needs a calibration of its own; until then its scale is taken from the computed"
        + " Moon.";
  }
}
