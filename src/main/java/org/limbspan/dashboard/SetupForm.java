package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.NewSetup;
import org.limbspan.rig.OnConflict;

/** The form that opens a setup, as it was filled in. */
record SetupForm(@Nullable String startedAt, @Nullable String setupNote) {

  static final SetupForm EMPTY = new SetupForm(null, null);

  private static final int LONGEST_NOTE = 2000;

  /** What is wrong with it, by the name of the field; empty if nothing is. */
  Map<String, String> complaints(RigTime time, Instant now) {
    Map<String, String> complaints = new LinkedHashMap<>();
    if (time.instant(text(startedAt)).isEmpty()) {
      complaints.put("startedAt", "Not understood: expected a day, or a day and time.");
    } else if (time.instant(text(startedAt)).orElseThrow().isAfter(now)) {
      complaints.put("startedAt", "Expected a time that has passed.");
    }
    if (text(setupNote).length() > LONGEST_NOTE) {
      complaints.put("setupNote", "Expected at most 2000 characters.");
    }
    return complaints;
  }

  /** The setup of a form without complaints. */
  NewSetup setup(RigTime time) {
    return new NewSetup(
        time.instant(text(startedAt)).orElseThrow(),
        text(setupNote).isEmpty() ? null : text(setupNote),
        OnConflict.REFUSE);
  }
}
