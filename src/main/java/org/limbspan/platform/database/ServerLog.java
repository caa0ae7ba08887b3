package org.limbspan.platform.database;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;

/** The server's log file: one predecessor is kept, so that it cannot grow without end. */
final class ServerLog {

  private static final long LARGEST_BYTES = 5_000_000;
  private static final int TAIL_LINES = 12;

  private ServerLog() {}

  /** The file to which the server can add now. */
  static Path ready(Path file) throws IOException {
    if (Files.exists(file) && Files.size(file) > LARGEST_BYTES) {
      Path predecessor = file.resolveSibling(file.getFileName() + ".1");
      Files.move(file, predecessor, StandardCopyOption.REPLACE_EXISTING);
    }
    return file;
  }

  /** Its last lines, for a person who has to find out why the server did not start. */
  static String tail(Path file) throws IOException {
    if (Files.notExists(file)) {
      return "";
    }
    String[] lines = Files.readString(file, StandardCharsets.ISO_8859_1).split("\n");
    int from = Math.max(0, lines.length - TAIL_LINES);
    return String.join("\n", Arrays.asList(lines).subList(from, lines.length));
  }
}
