package org.limbspan.bench.service;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Future;
import org.limbspan.testing.ReferenceFolder;

/** What a service makes of the same rigs if nobody disturbs it. */
final class Undisturbed {

  private static final int SHOWN = 3;

  private Undisturbed() {}

  static Map<String, String> judgements(Path jar, Path home)
      throws IOException, InterruptedException {
    try (ServiceProcess service =
            ServiceProcess.of(jar, home, List.of("-Xmx256m"), List.of(), Map.of());
        Clients clients = new Clients(service::http)) {
      service.start();
      List<Future<?>> sent = new ArrayList<>();
      for (String folder : ReferenceFolder.names().toList()) {
        for (Deed deed : Deeds.whole(folder)) {
          sent.add(clients.send(deed));
        }
      }
      Clients.await(sent);
      return new Stand(service.http()).judgements(Deeds.rigs());
    }
  }

  /** The parts that are not the same; the first of them are shown where they part. */
  static List<String> differences(Map<String, String> expected, Map<String, String> found) {
    List<String> different =
        expected.keySet().stream()
            .filter(part -> !Objects.equals(expected.get(part), found.get(part)))
            .toList();
    different.stream().limit(SHOWN).forEach(part -> show(part, expected, found));
    return different;
  }

  private static void show(String part, Map<String, String> expected, Map<String, String> found) {
    String one = expected.getOrDefault(part, "");
    String other = found.getOrDefault(part, "");
    int at = 0;
    while (at < Math.min(one.length(), other.length()) && one.charAt(at) == other.charAt(at)) {
      at++;
    }
    int from = Math.max(0, at - 80);
    System.out.printf(
        "%s%n  undisturbed ...%s%n  disturbed   ...%s%n",
        part,
        one.substring(from, Math.min(one.length(), at + 80)),
        other.substring(from, Math.min(other.length(), at + 80)));
  }
}
