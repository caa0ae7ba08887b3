package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Axis;
import org.limbspan.watch.AnswerCause;
import org.limbspan.watch.NewAnswer;
import org.limbspan.watch.Remedy;

/**
 * The answer to a remark, as it was filled in.
 *
 * @param readings what is done to the readings it concerns: {@code keep}, {@code withdraw}, or the
 *     axis that they were truly measured along
 */
record AnswerForm(
    @Nullable String cause,
    @Nullable String changedAt,
    @Nullable String note,
    @Nullable String readings) {

  static final AnswerForm EMPTY = new AnswerForm(null, null, null, null);

  /** What may be done to the readings, by the word that the form sends. */
  static final Map<String, String> REMEDIES = remedies();

  private static Map<String, String> remedies() {
    Map<String, String> remedies = new LinkedHashMap<>();
    remedies.put("keep", "Leave them as they are");
    remedies.put("withdraw", "Withdraw them: they are wrong and cannot be mended");
    remedies.put("horizontal", "They were measured along the horizon (axis horizontal)");
    remedies.put("vertical", "They were measured across the horizon (axis vertical)");
    remedies.put("limb-fit", "They are fits to the whole limb (axis limb-fit)");
    return Collections.unmodifiableMap(remedies);
  }

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
    if (!text(readings).isEmpty() && !REMEDIES.containsKey(text(readings))) {
      complaints.put("readings", "Expected one of the choices.");
    }
    return complaints;
  }

  /** The answer of a form without complaints. */
  NewAnswer answer(RigTime time) {
    return new NewAnswer(
        chosen().orElseThrow(),
        text(note).isEmpty() ? null : text(note),
        changed(time).orElse(null),
        remedy());
  }

  private Optional<AnswerCause> chosen() {
    return Arrays.stream(AnswerCause.values())
        .filter(each -> each.label().equals(text(cause)))
        .findFirst();
  }

  private Optional<Instant> changed(RigTime time) {
    return time.instant(text(changedAt));
  }

  private Remedy remedy() {
    return switch (text(readings)) {
      case "withdraw" -> new Remedy.Withdraw();
      case "horizontal", "vertical", "limb-fit" -> new Remedy.Relabel(Axis.ofLabel(text(readings)));
      default -> Remedy.NONE;
    };
  }
}
