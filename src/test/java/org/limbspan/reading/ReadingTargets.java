package org.limbspan.reading;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.time.Instant;
import java.util.List;
import org.limbspan.intake.CsvBody;
import org.limbspan.intake.EntrySource;
import org.limbspan.intake.JsonBody;
import org.limbspan.intake.Query;
import org.limbspan.intake.Range;
import org.limbspan.platform.Problem;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Sky;
import org.limbspan.testing.fuzz.ParserTarget;

/** What is sent as readings, and what is asked of them. */
public final class ReadingTargets {

  private static final Instant NOW = Instant.parse("2026-06-01T00:00:00Z");

  private static final String ENTRY =
      """
      {"takenAt": "2026-03-01T18:40:00+01:00", "axis": "horizontal",
       "framesPx": [1688.1, 1690.2, 1688.9], "altitudeDeg": 23, "azimuthDeg": 359.5,
       "exposureS": 0.004, "iso": 200, "fNumber": 8, "sky": "haze, \\"thin\\"", "note": "two\\nlines",
       "supersedes": true}""";

  private static final String SHORT_ENTRY =
      """
      {"takenAt":"2026-03-01T17:40:00Z","axis":"limb-fit","diameterArcmin":31.02,"uncertaintyArcmin":0.03}""";

  private static final String LINES =
      """
      taken_at,axis,diameter_px,uncertainty_px,altitude_deg,iso,note
      2026-03-02T22:30:00+01:00,horizontal,1680.4,1.5,44,400,"thin, ""very"" thin"
      2026-03-02T23:30:00+01:00,vertical,1681.25,1.5,,,
      """;

  private static final String COMMAS =
      """
      Taken_At;Axis;Frames_Px;Sky;of its own
      2026-03-02T22:30:00Z;horizontal;1680,4 1681,2 1680,0;clear;kept
      """;

  private static final String[] WORDS = {
    "takenAt",
    "axis",
    "diameterPx",
    "diameterMm",
    "framesPx",
    "framesMm",
    "uncertaintyPx",
    "\"a\":1",
    "[[[[[[[[",
    "{\"a\":{\"a\":",
    "\\u0000",
    "\\ud800",
    "taken_at,",
    "frames_px;",
    "\"\"",
    "1 2 3",
    "horizontal",
    "2026-02-29T00:00:00Z",
    "-18:00",
    "+18:01",
    "1.7976931348623157e308"
  };

  private ReadingTargets() {}

  public static List<ParserTarget> all(Sky sky) {
    return List.of(
        new ParserTarget(
            "JSON entries",
            25,
            bytes(ENTRY, SHORT_ENTRY, "[" + ENTRY + "," + SHORT_ENTRY + "]", "[]", "{}"),
            List.of(WORDS),
            input -> read(new JsonBody(stream(input)), sky),
            List.of(Problem.class)),
        new ParserTarget(
            "CSV entries",
            25,
            bytes(LINES, COMMAS, "\ufeff" + LINES.replace("\n", "\r\n"), LINES.replace(',', '\t')),
            List.of(WORDS),
            input -> read(csv(input, UTF_8), sky),
            List.of(Problem.class)),
        new ParserTarget(
            "CSV entries in UTF-16",
            5,
            List.of(
                LINES.getBytes(java.nio.charset.StandardCharsets.UTF_16),
                COMMAS.getBytes(java.nio.charset.StandardCharsets.UTF_16)),
            List.of(WORDS),
            input -> read(csv(input, java.nio.charset.StandardCharsets.UTF_16), sky),
            List.of(Problem.class)),
        ParserTarget.ofText(
            "instants",
            10,
            text -> Query.instant("from", text),
            List.of(
                "2026-05-02T21:14:00+02:00",
                "2026-05-02T21:14:00.123456789Z",
                "2026-05-02T21:14:00 02:00",
                "1980-01-01T00:00Z"),
            WORDS),
        ParserTarget.ofText(
            "numbers",
            10,
            text -> {
              Query.number("latitudeDeg", text, Range.between(-90, 90));
              Query.whole("limit", text, Range.between(1, 5000));
            },
            List.of("40", "5e1", "1.", "+7.0", "90")),
        ParserTarget.ofText(
            "paging and spans",
            10,
            text -> {
              String[] parts = text.split("\\|", 4);
              ReadingSpan span = SpanQuery.of(part(parts, 0), part(parts, 1));
              PageToken.spanAfter(part(parts, 3), span);
              SpanQuery.limit(part(parts, 2));
            },
            List.of(
                "2026-01-01T00:00:00Z|2026-02-01T00:00:00Z|500|MjAyNi0wMS0wMVQwMDowMDowMFogaG9yaXpvbnRhbA",
                "|||MjAyNi0wMS0wMVQwMDowMDowMFogdmVydGljYWw",
                "2026-01-01T00:00:00Z||5000|"),
            "|",
            "=",
            "-_"));
  }

  private static @org.jspecify.annotations.Nullable String part(String[] parts, int index) {
    return index < parts.length && !parts[index].isEmpty() ? parts[index] : null;
  }

  private static CsvBody csv(byte[] input, Charset charset) {
    return new CsvBody(stream(input), charset, ReadingEntry.REQUIRED_COLUMNS);
  }

  private static void read(EntrySource source, Sky sky) throws IOException {
    ReadingEntry reader = new ReadingEntry(sky, NOW, OnConflict.REFUSE);
    source.forEach(
        entry -> {
          reader.read(entry);
          entry.violations();
        });
  }

  private static InputStream stream(byte[] input) {
    return new ByteArrayInputStream(input);
  }

  private static List<byte[]> bytes(String... texts) {
    return java.util.Arrays.stream(texts).map(text -> text.getBytes(UTF_8)).toList();
  }
}
