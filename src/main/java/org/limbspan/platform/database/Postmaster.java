package org.limbspan.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The server's own note of who serves a data directory: {@code postmaster.pid}, whose first line is
 * the process. It stays behind when the server is killed.
 *
 * @param file the note
 * @param pid the process named in it
 */
record Postmaster(Path file, long pid) {

  private static final boolean LINUX = System.getProperty("os.name").startsWith("Linux");

  /** Above every process id that an operating system gives. */
  private static final String NOBODY = "999999999";

  static Optional<Postmaster> of(Path dataDirectory) throws IOException {
    Path file = dataDirectory.resolve("postmaster.pid");
    if (Files.notExists(file)) {
      return Optional.empty();
    }
    List<String> lines = Files.readAllLines(file);
    return lines.isEmpty()
        ? Optional.empty()
        : Optional.of(new Postmaster(file, Long.parseLong(lines.get(0).strip())));
  }

  Optional<ProcessHandle> process() {
    return ProcessHandle.of(pid).filter(ProcessHandle::isAlive);
  }

  /** Whether the process is a PostgreSQL server of this data directory, not a later namesake. */
  boolean isServing() {
    return serving().isPresent();
  }

  /** The same, with the process at hand. */
  Optional<ServingProcess> serving() {
    return process().filter(this::isOurs).map(ServingProcess::of);
  }

  /** What cannot be seen of a process counts as a no on Linux, where zombies show nothing. */
  private boolean isOurs(ProcessHandle process) {
    ProcessHandle.Info info = process.info();
    boolean unseen = !LINUX;
    return info.command().map(Postmaster::isPostgres).orElse(unseen)
        && info.arguments().map(a -> Arrays.asList(a).contains(data())).orElse(unseen);
  }

  private static boolean isPostgres(String command) {
    return Path.of(command).endsWith("postgres") || Path.of(command).endsWith("postgres.exe");
  }

  private String data() {
    return String.valueOf(file.getParent());
  }

  /**
   * Names nobody as the process, when its number has gone to a stranger for whom the server would
   * refuse to start. The rest stays: by it the server knows remains of the last run in memory.
   */
  void disown() throws IOException {
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    lines.set(0, NOBODY);
    Files.write(file, lines);
  }
}
