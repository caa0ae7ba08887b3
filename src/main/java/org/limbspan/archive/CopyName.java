package org.limbspan.archive;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the name of a copy says: {@code SLUG-20261127T020312Z-r57.zip}.
 *
 * @param takenAt to the second
 * @param revision of the ledger, which the copy reflects or is ahead of
 */
record CopyName(Instant takenAt, long revision) {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);
  private static final Pattern AFTER_SLUG =
      Pattern.compile("-([0-9]{8}T[0-9]{6}Z)-r([0-9]{1,18})\\.zip");

  CopyName {
    takenAt = takenAt.truncatedTo(ChronoUnit.SECONDS);
  }

  String of(String slug) {
    return slug + "-" + TIME.format(takenAt) + "-r" + revision + ".zip";
  }

  /** Empty if a file of that name is none of the rig's copies. */
  static Optional<CopyName> read(String slug, String fileName) {
    if (!fileName.startsWith(slug)) {
      return Optional.empty();
    }
    Matcher rest = AFTER_SLUG.matcher(fileName.substring(slug.length()));
    try {
      return rest.matches()
          ? Optional.of(
              new CopyName(TIME.parse(rest.group(1), Instant::from), Long.parseLong(rest.group(2))))
          : Optional.empty();
    } catch (DateTimeParseException noDate) {
      return Optional.empty();
    }
  }
}
