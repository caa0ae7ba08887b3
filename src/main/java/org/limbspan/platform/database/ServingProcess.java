package org.limbspan.platform.database;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A process that was found to be the server of a data directory. To see whether it still lives
 * costs a fifth of finding it, and is asked every two seconds.
 *
 * @param process the process; it knows when it began, so that a later namesake is none of it
 * @param program what the system shows of its program, on Linux
 */
record ServingProcess(ProcessHandle process, Path program) {

  private static final boolean LINUX = System.getProperty("os.name").startsWith("Linux");

  static ServingProcess of(ProcessHandle process) {
    return new ServingProcess(process, Path.of("/proc", Long.toString(process.pid()), "exe"));
  }

  /** One that ended and was collected by nobody is still listed, but has no program. */
  boolean lives() {
    return process.isAlive() && (!LINUX || Files.exists(program));
  }
}
