package org.limbspan.photo;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Instants as a refusal tells them to the readers of a page: in the time zone of the rig. */
record PageTime(ZoneId zone) {

  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);

  String minute(Instant at) {
    return MINUTE.format(at.atZone(zone));
  }
}
