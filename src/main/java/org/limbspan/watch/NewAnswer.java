package org.limbspan.watch;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What the owner says of an alert.
 *
 * @param changedAt when it happened; with {@link AnswerCause#ZOOM_MOVED} a setup is opened there,
 *     or, if it is not given, at the best estimate of the onset
 */
public record NewAnswer(AnswerCause cause, @Nullable String note, @Nullable Instant changedAt) {}
