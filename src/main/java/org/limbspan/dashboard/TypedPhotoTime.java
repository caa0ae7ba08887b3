package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * When photographs were taken whose files tell no time, as it was typed.
 *
 * @param typed may be empty
 */
record TypedPhotoTime(@Nullable String typed) {

  /**
   * Complains of a time that is none, that the clock does not tell apart, that has not come, or of
   * which the Moon cannot be computed.
   *
   * @param from the first instant of which the Moon can be computed
   */
  void complain(
      Map<String, String> complaints, String field, RigTime time, Instant from, Instant now) {
    if (text(typed).isEmpty()) {
      return;
    }
    CalibrationForm.taken(complaints, field, typed, time, now);
    if (!complaints.containsKey(field) && instant(time).orElseThrow().isBefore(from)) {
      complaints.put(field, "Expected a time from " + time.field(from) + " on.");
    }
  }

  /** The time, if there is no complaint of it; empty if none was typed. */
  Optional<Instant> instant(RigTime time) {
    return text(typed).isEmpty() ? Optional.empty() : time.instant(text(typed));
  }

  /**
   * When a photograph was taken, to be followed by more. Where a time was typed, it is said which
   * one counts; empty if none is known.
   */
  String words(RigTime time, @Nullable Instant takenAt, boolean heldBefore) {
    if (takenAt == null) {
      return "";
    }
    return "Taken "
        + time.minute(takenAt)
        + instant(time).map(its -> whose(its.equals(takenAt), heldBefore)).orElse("")
        + "; ";
  }

  private static String whose(boolean equal, boolean heldBefore) {
    if (equal) {
      return ", as typed";
    }
    return heldBefore ? ", as it is held" : ", as its file tells";
  }
}
