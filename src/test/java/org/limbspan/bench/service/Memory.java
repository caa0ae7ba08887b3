package org.limbspan.bench.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** What a process and its children hold, by /proc (proc(5), Linux). */
final class Memory {

  private Memory() {}

  /** Resident memory of a service, and proportional memory of it with its embedded database. */
  static String of(ServiceProcess service) throws IOException {
    long pid = service.pid();
    List<Long> family = family(service);
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

  /** Processor time that both have used, in clock ticks of 10 ms. */
  static double processorSeconds(ServiceProcess service) throws IOException {
    return processorSeconds(family(service));
  }

  /** The same of some processes, by their ids. */
  static double processorSeconds(List<Long> processes) throws IOException {
    double ticks = 0;
    for (long one : processes) {
      Path file = Path.of("/proc", Long.toString(one), "stat");
      if (Files.exists(file)) {
        String[] fields = Files.readString(file).replaceFirst(".*\\) ", "").split(" ", -1);
        ticks += Double.parseDouble(fields[11]) + Double.parseDouble(fields[12]);
      }
    }
    return ticks / 100;
  }

  /** The database's main process is no child: it has left its parent. */
  private static List<Long> family(ServiceProcess service) throws IOException {
    List<Long> family = new ArrayList<>(List.of(service.pid()));
    service
        .postmaster()
        .ifPresent(
            main -> {
              family.add(main.pid());
              main.descendants().map(ProcessHandle::pid).forEach(family::add);
            });
    return family;
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
