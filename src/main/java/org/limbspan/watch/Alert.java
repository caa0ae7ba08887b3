package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An alert as it is shown and sent.
 *
 * @param id the same for the same finding in the same ledger
 * @param kind one of the eight kinds, such as {@code scale-step}
 * @param state the word of an {@link AlertState}
 * @param setup number of the setup in which it began, from 0
 * @param onsetAt best estimate of the beginning
 * @param onsetFrom lower end of the interval of 95 percent
 * @param onsetTo upper end of the interval of 95 percent
 * @param until when it ended, if it did
 * @param raisedAt when the service first raised it
 * @param settledAt when it was first found settled, if it is
 * @param evidenceAt instant of the reading with which the evidence was enough
 * @param sizePercent how much, as {@link org.limbspan.drift.Finding} defines it for its kind
 * @param uncertaintyPercent standard uncertainty of it
 * @param probability that it is no chance, 0 to 1
 * @param explanation all of it in words
 * @param words the same, a field to each question
 * @param readings instants of the readings that show it
 * @param answers what the owner said, oldest first
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Alert(
    UUID id,
    String kind,
    String state,
    int setup,
    Instant onsetAt,
    Instant onsetFrom,
    Instant onsetTo,
    @Nullable Instant until,
    Instant raisedAt,
    @Nullable Instant settledAt,
    Instant evidenceAt,
    double sizePercent,
    double uncertaintyPercent,
    double probability,
    String explanation,
    Explanation words,
    List<AlertCause> likelyCauses,
    List<Instant> readings,
    List<AlertReply> answers) {

  public Alert {
    likelyCauses = List.copyOf(likelyCauses);
    readings = List.copyOf(readings);
    answers = List.copyOf(answers);
  }

  Alert with(
      UUID newId,
      Instant newRaisedAt,
      @Nullable Instant newSettledAt,
      AlertState newState,
      List<AlertReply> newAnswers) {
    return new Alert(
        newId,
        kind,
        newState.label(),
        setup,
        onsetAt,
        onsetFrom,
        onsetTo,
        until,
        newRaisedAt,
        newSettledAt,
        evidenceAt,
        sizePercent,
        uncertaintyPercent,
        probability,
        explanation,
        words,
        likelyCauses,
        readings,
        newAnswers);
  }
}
