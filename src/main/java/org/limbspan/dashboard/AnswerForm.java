package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.watch.AnswerCause;
import org.limbspan.watch.NewAnswer;

/** The answer to a remark, as it was filled in. */
record AnswerForm(@Nullable String cause, @Nullable String changedAt, @Nullable String note) {

  static final AnswerForm EMPTY = new AnswerForm(null, null, null);

  private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");
  private static final int DAY_LENGTH = 10;
  private static final int LONGEST_NOTE = 2000;

  /** What is wrong with it, by the name of the field; empty if nothing is. */
  Map<String, String> complaints(RigTime time, Instant now) {
    Map<String, String> complaints = new LinkedHashMap<>();
    if (chosen().isEmpty()) {
      complaints.put("cause", "One of the answers is needed.");
    }
    Optional<Instant> instant = changed(time);
    if (!text(changedAt).isEmpty() && instant.isEmpty()) {
      complaints.put("changedAt", "Not understood: expected a day, or a day and time.");
    } else if (instant.filter(at -> at.isAfter(now)).isPresent()) {
      complaints.put("changedAt", "Expected a time that has passed.");
    }
    if (text(note).length() > LONGEST_NOTE) {
      complaints.put("note", "Expected at most 2000 characters.");
    }
    return complaints;
  }

  /** The answer of a form without complaints. */
  NewAnswer answer(RigTime time) {
    return new NewAnswer(
        chosen().orElseThrow(),
        text(note).isEmpty() ? null : text(note),
        changed(time).orElse(null));
  }

  private Optional<AnswerCause> chosen() {
    return Arrays.stream(AnswerCause.values())
        .filter(each -> each.label().equals(text(cause)))
        .findFirst();
  }

  /** A local time of the rig's zone; noon of a day alone. */
  private Optional<Instant> changed(RigTime time) {
    String local = text(changedAt).replace('T', ' ');
    try {
      LocalDateTime moment =
          local.length() == DAY_LENGTH
              ? LocalDate.parse(local).atTime(12, 0)
              : LocalDateTime.parse(local, MINUTE);
      return Optional.of(moment.atZone(time.zone()).toInstant());
    } catch (DateTimeParseException notATime) {
      return Optional.empty();
    }
  }
}
