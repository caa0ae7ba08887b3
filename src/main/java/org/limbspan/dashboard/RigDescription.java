package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.time.ZoneId;
import java.time.zone.ZoneRulesProvider;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Reads a {@link RigForm}: the values, and for each field what is wrong with it. */
final class RigDescription {

  /** Greatest known difference of legal from mean solar time: 2.9 h, in the west of China. */
  private static final double ZONE_DOUBT_HOURS = 3;

  private final RigForm form;
  private final Map<String, String> complaints = new LinkedHashMap<>();
  private double latitudeDeg = Double.NaN;
  private double longitudeDeg = Double.NaN;
  private double elevationM = Double.NaN;
  private boolean zoneDoubted;

  RigDescription(RigForm form, Instant now) {
    this.form = form;
    readNames();
    readPlace();
    readZone(now);
  }

  /** What is wrong, by the name of the field, in the order of the form. */
  Map<String, String> complaints() {
    return complaints;
  }

  /** Whether the time zone is the only doubt about it: it exists but lies far from the place. */
  boolean isZoneDoubted() {
    return zoneDoubted;
  }

  String name() {
    return text(form.name());
  }

  String slug() {
    return form.shortName();
  }

  double latitudeDeg() {
    return latitudeDeg;
  }

  double longitudeDeg() {
    return longitudeDeg;
  }

  double elevationM() {
    return elevationM;
  }

  ZoneId timeZone() {
    return ZoneId.of(text(form.timeZone()));
  }

  Optional<String> note() {
    return Optional.of(text(form.note())).filter(note -> !note.isEmpty());
  }

  private void readNames() {
    if (name().isEmpty()) {
      complaints.put("name", "The rig needs a name.");
    }
    boolean told = !name().isEmpty() || !text(form.slug()).isEmpty();
    if (told && !slug().matches("[a-z0-9-]{1,40}")) {
      complaints.put(
          "slug", "The short name takes 1 to 40 of a to z, 0 to 9 and hyphens, nothing else.");
    }
  }

  private void readPlace() {
    Coordinate.LATITUDE
        .degrees(text(form.latitude()))
        .ifPresentOrElse(
            degrees -> latitudeDeg = degrees,
            () ->
                complaints.put(
                    "latitude",
                    "Latitude is not understood: expected \u221290 to 90 degrees, such as 52.1043 or"
                        + " 52\u00b0 06\u2032 15\u2033 N."));
    Coordinate.LONGITUDE
        .degrees(text(form.longitude()))
        .ifPresentOrElse(
            degrees -> longitudeDeg = degrees,
            () ->
                complaints.put(
                    "longitude",
                    "Longitude is not understood: expected \u2212180 to 180 degrees, such as \u22124.0817 or"
                        + " 4\u00b0 04\u2032 54\u2033 W."));
    try {
      elevationM =
          Double.parseDouble(text(form.elevation()).replace('\u2212', '-').replace(',', '.'));
    } catch (NumberFormatException notANumber) {
      elevationM = Double.NaN;
    }
    if (!(elevationM >= -500 && elevationM <= 9000)) {
      complaints.put(
          "elevation", "Elevation is not understood: expected \u2212500 to 9000 metres.");
    }
  }

  private void readZone(Instant now) {
    String zone = text(form.timeZone());
    if (!ZoneRulesProvider.getAvailableZoneIds().contains(zone)) {
      complaints.put("timeZone", "There is no such time zone; expected one such as Europe/Lisbon.");
      return;
    }
    double clockHours =
        ZoneId.of(zone).getRules().getStandardOffset(now).getTotalSeconds() / 3600.0;
    double apart = Math.abs(Math.IEEEremainder(clockHours - longitudeDeg / 15, 24));
    if (apart > ZONE_DOUBT_HOURS && !form.isZoneConfirmed()) {
      zoneDoubted = true;
      complaints.put(
          "timeZone",
          String.format(
              "The clocks of %s are %.0f hours from the Sun at this longitude. Look at the sign of"
                  + " the longitude; if all is right, say so below.",
              zone, apart));
    }
  }
}
