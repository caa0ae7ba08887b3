package org.limbspan.rig;

import java.time.ZoneId;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Range;
import org.limbspan.sky.Site;

/** Reads a rig from what a client sent. */
final class RigEntry {

  private static final Pattern SLUG = Pattern.compile("[a-z0-9-]{1,40}");
  private static final Set<String> FIELDS =
      new LinkedHashSet<>(
          List.of("slug", "name", "latitudeDeg", "longitudeDeg", "elevationM", "timeZone", "note"));

  private RigEntry() {}

  static NewRig read(Entry entry) {
    entry.refuseBeside(FIELDS);
    Optional<String> slug = slug(entry);
    Optional<String> name = entry.text("name", 200);
    OptionalDouble latitudeDeg = entry.number("latitudeDeg", Range.between(-90, 90));
    OptionalDouble longitudeDeg = entry.number("longitudeDeg", Range.between(-180, 180));
    OptionalDouble elevationM = entry.number("elevationM", Range.between(-500, 9000));
    Optional<ZoneId> timeZone = timeZone(entry);
    Optional<String> note = entry.optionalText("note", 2000);
    entry.requireSound();
    return new NewRig(
        slug.orElseThrow(),
        name.orElseThrow(),
        new Site(latitudeDeg.orElseThrow(), longitudeDeg.orElseThrow(), elevationM.orElseThrow()),
        timeZone.orElseThrow(),
        note.orElse(null));
  }

  private static Optional<String> slug(Entry entry) {
    return entry.word("slug", SLUG.asMatchPredicate(), "1 to 40 of a-z, 0-9 and '-'");
  }

  private static Optional<ZoneId> timeZone(Entry entry) {
    return entry
        .word(
            "timeZone",
            ZoneId.getAvailableZoneIds()::contains,
            "the IANA name of a time zone, such as Europe/Madrid")
        .map(ZoneId::of);
  }
}
