package org.limbspan.watch;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.LongFunction;
import org.limbspan.platform.NotFound;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the ledger of a rig says, its alerts, and the owner's answers to them. */
@Service
public class Watch {

  private final Rigs rigs;
  private final JudgementRepository judgements;
  private final AlertRepository alerts;
  private final AnswerWriter answers;

  Watch(Rigs rigs, JudgementRepository judgements, AlertRepository alerts, AnswerWriter answers) {
    this.rigs = rigs;
    this.judgements = judgements;
    this.alerts = alerts;
    this.answers = answers;
  }

  /** The newest judgement; an empty one, pending, of a rig that was never judged. */
  @Transactional(readOnly = true)
  public Judgement judgement(Rig rig) {
    return judgement(rig, judgements::find);
  }

  /**
   * The same, perhaps without its single nights, for those who need only what they say together.
   */
  @Transactional(readOnly = true)
  public Judgement judgementInBrief(Rig rig) {
    return judgement(rig, judgements::findInBrief);
  }

  private Judgement judgement(Rig rig, LongFunction<Optional<JudgementRepository.Kept>> newest) {
    long revision = rigs.revision(rig.id());
    return newest
        .apply(rig.id())
        .map(
            kept ->
                new Judgement(
                    kept.judgedAt(),
                    !kept.reflects(revision),
                    kept.document().cycle(),
                    kept.document().nights(),
                    kept.document().hypotheses(),
                    Objects.requireNonNullElse(kept.document().own(), OwnResult.NONE)))
        .orElseGet(() -> Unjudged.of(rig));
  }

  /**
   * The two questions, answered from the newest judgement.
   *
   * @param selfReliant whether to tell only what depends on nobody else's tables
   */
  @Transactional(readOnly = true)
  public Conclusions conclusions(Rig rig, boolean selfReliant) {
    return ConclusionsSummary.of(judgement(rig), rig.site(), selfReliant);
  }

  /** The alerts of the newest judgement, by the reading that proved them. */
  @Transactional(readOnly = true)
  public List<Alert> alerts(Rig rig) {
    return alerts.list(rig.id()).stream().map(AlertRepository.Kept::alert).toList();
  }

  /**
   * One alert.
   *
   * @throws NotFound if the rig has none of that id
   */
  @Transactional(readOnly = true)
  public Alert alert(Rig rig, UUID alertId) {
    return alerts(rig).stream()
        .filter(alert -> alert.id().equals(alertId))
        .findFirst()
        .orElseThrow(() -> new NotFound("alert", "id", alertId.toString()));
  }

  /**
   * Enters what the owner says of an alert, and does what follows from it.
   *
   * @return the alert as it stands until the next judgement
   * @throws NotFound if the rig has no such alert
   */
  @Transactional
  public Alert answer(Rig rig, UUID alertId, NewAnswer answer, Instant now) {
    return answers.write(rig, alert(rig, alertId), answer, now);
  }
}
