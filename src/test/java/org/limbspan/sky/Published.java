package org.limbspan.sky;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Objects;

/** Files of {@code reference/published}. */
final class Published {

  private Published() {}

  static List<String> lines(String name) {
    try (InputStream in =
        Objects.requireNonNull(
            Published.class.getResourceAsStream("/reference/published/" + name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rows of a CSV without quotes: no comments, no header. */
  static List<String[]> rows(String name) {
    return lines(name).stream()
        .filter(line -> !line.startsWith("#"))
        .skip(1)
        .map(line -> line.split(",", -1))
        .toList();
  }

  /** An instant written to the minute, {@code 2024-01-01T06:00Z}. */
  static Instant minute(String text) {
    return Instant.parse(text.replace("Z", ":00Z"));
  }
}
