package org.limbspan.bench.service;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Processes of the test database's server, which this virtual machine started. */
final class ServerBackends {

  private ServerBackends() {}

  /** Sends a signal to all of them and to the server itself. */
  static void signal(String name) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("kill", "-" + name));
    ProcessHandle.current()
        .descendants()
        .filter(its -> isPostgres(Optional.of(its)))
        .forEach(its -> command.add(Long.toString(its.pid())));
    Shell.run(command.toArray(String[]::new));
  }

  private static boolean isPostgres(Optional<ProcessHandle> process) {
    return process.flatMap(its -> its.info().command()).orElse("").endsWith("/postgres");
  }

  /** Kills one of them without a word, which makes the server recover from its log. */
  static String killOne(Random random) {
    List<ProcessHandle> backends =
        ProcessHandle.current()
            .descendants()
            .filter(its -> isPostgres(Optional.of(its)) && isPostgres(its.parent()))
            .filter(its -> !its.children().findAny().isPresent())
            .toList();
    if (backends.isEmpty()) {
      throw new IllegalStateException("the test database's server has no process to kill");
    }
    backends.get(random.nextInt(backends.size())).destroyForcibly();
    return "one process of the database";
  }
}
