package org.limbspan.bench.service;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.limbspan.testing.ReferenceFolder;
import org.springframework.core.io.ClassPathResource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The simulated rigs of the reference data, cut into what a client would send bit by bit. */
final class Deeds {

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final int MOST_LINES = 20;

  private Deeds() {}

  static List<String> rigs() {
    return ReferenceFolder.names().map(Deeds::slug).toList();
  }

  /** Everything of one rig in a few requests. */
  static List<Deed> whole(String folder) throws IOException {
    List<Deed> deeds = new ArrayList<>(description(folder));
    deeds.add(csv(folder, "calibrations", lines(folder, "calibrations.csv"), Set.of()));
    List<String> lines = lines(folder, "readings.csv");
    deeds.add(csv(folder, "readings", lines, instants(lines)));
    return deeds;
  }

  /** Rigs and setups of all folders, then calibrations and readings in bits of uneven size. */
  static List<Deed> bits(Random random) throws IOException {
    List<Deed> descriptions = new ArrayList<>();
    List<List<Deed>> byRig = new ArrayList<>();
    for (String folder : ReferenceFolder.names().toList()) {
      descriptions.addAll(description(folder));
      List<Deed> bits = new ArrayList<>(bits(folder, "readings", random));
      List<Deed> calibrations = bits(folder, "calibrations", random);
      for (int i = 0; i < calibrations.size(); i++) {
        bits.add(i * (bits.size() / calibrations.size()), calibrations.get(i));
      }
      byRig.add(bits);
    }
    List<Deed> all = descriptions;
    while (!byRig.isEmpty()) {
      List<Deed> one = byRig.get(random.nextInt(byRig.size()));
      all.add(one.remove(0));
      byRig.removeIf(List::isEmpty);
    }
    return all;
  }

  private static List<Deed> description(String folder) throws IOException {
    List<Deed> deeds = new ArrayList<>();
    ObjectNode rig = (ObjectNode) MAPPER.readTree(text(folder, "rig.json"));
    rig.put("slug", slug(folder));
    deeds.add(json(folder, "/api/rigs", rig));
    for (JsonNode setup : MAPPER.readTree(text(folder, "setups.json"))) {
      deeds.add(json(folder, "/api/rigs/" + slug(folder) + "/setups", setup));
    }
    return deeds;
  }

  private static List<Deed> bits(String folder, String what, Random random) throws IOException {
    List<String> lines = lines(folder, what + ".csv");
    List<Deed> bits = new ArrayList<>();
    for (int from = 1; from < lines.size(); ) {
      int to = Math.min(lines.size(), from + 1 + random.nextInt(MOST_LINES));
      List<String> part = new ArrayList<>(List.of(lines.get(0)));
      part.addAll(lines.subList(from, to));
      bits.add(csv(folder, what, part, what.equals("readings") ? instants(part) : Set.of()));
      from = to;
    }
    return bits;
  }

  private static Deed json(String folder, String path, JsonNode body) {
    return new Deed(slug(folder), path, "application/json", body.toString(), Set.of());
  }

  private static Deed csv(String folder, String what, List<String> lines, Set<String> readings) {
    String body = String.join("\n", lines) + "\n";
    return new Deed(
        slug(folder), "/api/rigs/" + slug(folder) + "/" + what, "text/csv", body, readings);
  }

  private static Set<String> instants(List<String> lines) {
    return lines.stream()
        .skip(1)
        .map(line -> OffsetDateTime.parse(line.substring(0, line.indexOf(','))).toInstant())
        .map(Instant::toString)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static String slug(String folder) {
    return folder.replace('.', '-');
  }

  private static List<String> lines(String folder, String file) throws IOException {
    return text(folder, file).lines().toList();
  }

  private static String text(String folder, String file) throws IOException {
    return new ClassPathResource("reference/readings/" + folder + "/" + file)
        .getContentAsString(StandardCharsets.UTF_8);
  }
}
