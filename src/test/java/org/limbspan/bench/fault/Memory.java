package org.limbspan.bench.fault;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What a process and its children hold, by /proc (proc(5), Linux). */
final class Memory {

  private Memory() {}

  /** Resident memory of the process, and proportional memory of it with all its children. */
  static String ofProcess(long pid) throws IOException {
    List<Long> family =
        Stream.concat(
                Stream.of(pid),
                ProcessHandle.of(pid).stream()
                    .flatMap(ProcessHandle::descendants)
                    .map(ProcessHandle::pid))
            .sorted(Comparator.naturalOrder())
            .toList();
    long shared = 0;
    for (long one : family) {
      shared += kib(Path.of("/proc", Long.toString(one), "smaps_rollup"), "Pss:");
    }
    return "service %d MB resident; with the database's %d processes %d MB (proportional share)"
        .formatted(
            kib(Path.of("/proc", Long.toString(pid), "status"), "VmRSS:") / 1024,
            family.size() - 1,
            shared / 1024);
  }

  private static long kib(Path file, String name) throws IOException {
    try (Stream<String> lines = Files.lines(file)) {
      return lines
          .filter(line -> line.startsWith(name))
          .map(line -> line.replaceAll("[^0-9]", ""))
          .mapToLong(Long::parseLong)
          .findFirst()
          .orElse(0);
    } catch (IOException gone) {
      if (Files.exists(file)) {
        throw gone;
      }
      return 0;
    }
  }
}
