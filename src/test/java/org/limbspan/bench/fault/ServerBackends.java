package org.limbspan.bench.fault;

import java.util.List;
import java.util.Random;

/** Processes of the test database's server, which this virtual machine started. */
final class ServerBackends {

  private ServerBackends() {}

  /** Kills one of them without a word, which makes the server recover from its log. */
  static String killOne(Random random) {
    List<ProcessHandle> backends =
        ProcessHandle.current()
            .descendants()
            .filter(its -> its.info().command().orElse("").contains("postgres"))
            .filter(
                its ->
                    its.parent().flatMap(up -> up.info().command()).orElse("").contains("postgres"))
            .filter(its -> !its.children().findAny().isPresent())
            .toList();
    if (backends.isEmpty()) {
      throw new IllegalStateException("the test database's server has no process to kill");
    }
    backends.get(random.nextInt(backends.size())).destroyForcibly();
    return "one process of the database";
  }
}
