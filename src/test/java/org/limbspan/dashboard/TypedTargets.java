package org.limbspan.dashboard;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.limbspan.testing.fuzz.ParserTarget;

/** What people type into forms. */
public final class TypedTargets {

  private static final Instant NOW = Instant.parse("2026-06-01T00:00:00Z");

  private TypedTargets() {}

  public static List<ParserTarget> all() {
    RigTime time = new RigTime(ZoneId.of("Europe/Madrid"));
    return List.of(
        ParserTarget.ofText(
            "typed numbers and places",
            10,
            text -> {
              TypedNumber.of(text);
              Coordinate.LATITUDE.degrees(text);
              Coordinate.LONGITUDE.degrees(text);
            },
            List.of(
                "297,5",
                "11 11/16",
                "52.1043",
                "52\u00b0 06\u2032 15\u2033 N",
                "\u22124,0817",
                "4 4 54 W"),
            "\u00b0",
            "\u2032",
            "/",
            "N",
            "S",
            "E",
            "W"),
        ParserTarget.ofText(
            "typed times",
            8,
            time::instant,
            List.of("2026-03-29 02:30", "2026-03-29", "2026-10-25T02:30:15"),
            "02:30",
            "24:00"),
        ParserTarget.ofText(
            "a typed rig",
            8,
            text -> {
              String[] f = text.split("\\|", 8);
              new RigDescription(
                      new RigForm(
                          at(f, 0), at(f, 1), at(f, 2), at(f, 3), at(f, 4), at(f, 5), at(f, 6),
                          at(f, 7)),
                      NOW)
                  .complaints();
            },
            List.of("Back garden|back|52.1043|5\u00b0 18\u2032 E|12|Europe/Amsterdam|note|yes"),
            "|"));
  }

  private static @org.jspecify.annotations.Nullable String at(String[] fields, int index) {
    return index < fields.length ? fields[index] : null;
  }
}
