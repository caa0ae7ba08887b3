package org.limbspan.watch;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What the owner says of an alert.
 *
 * @param changedAt when it happened; the best estimate of the onset if it is not given. With {@link
 *     AnswerCause#ZOOM_MOVED} a setup is opened there
 * @param remedy what is done to the readings from then on
 */
public record NewAnswer(
    AnswerCause cause, @Nullable String note, @Nullable Instant changedAt, Remedy remedy) {

  /** An answer that touches no reading. */
  public NewAnswer(AnswerCause cause, @Nullable String note, @Nullable Instant changedAt) {
    this(cause, note, changedAt, Remedy.NONE);
  }
}
