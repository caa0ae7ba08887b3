package org.limbspan.dashboard;

import java.text.Normalizer;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The form that describes a rig, as it was filled in: nothing is lost, whatever is wrong with it.
 *
 * @param zoneConfirmed {@code yes} if a time zone far from the longitude is meant all the same
 */
record RigForm(
    @Nullable String name,
    @Nullable String slug,
    @Nullable String latitude,
    @Nullable String longitude,
    @Nullable String elevation,
    @Nullable String timeZone,
    @Nullable String note,
    @Nullable String zoneConfirmed) {

  static final RigForm EMPTY = new RigForm(null, null, null, null, null, null, null, null);

  private static final int LONGEST_SLUG = 40;

  /** The short name: as entered, else made from the name. */
  String shortName() {
    return text(slug).isEmpty() ? shortNameOf(text(name)) : text(slug);
  }

  boolean isZoneConfirmed() {
    return "yes".equals(zoneConfirmed);
  }

  static String text(@Nullable String value) {
    return value == null ? "" : value.strip();
  }

  /** Letters without their accents, digits, and hyphens for the rest; at most 40. */
  private static String shortNameOf(String name) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFKD)
            .replaceAll("\\p{M}", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-+|-+$", "");
    return plain.substring(0, Math.min(plain.length(), LONGEST_SLUG)).replaceAll("-+$", "");
  }
}
