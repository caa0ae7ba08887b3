package org.limbspan.bench.service;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** What a service holds of its rigs, and what it makes of it. */
final class Stand {

  private static final Duration LONGEST_JUDGING = Duration.ofMinutes(3);
  private static final List<String> JUDGED = List.of("/alerts", "/cycle", "/nights", "/hypotheses");

  private final Http http;

  Stand(Http http) {
    this.http = http;
  }

  /** Instants of the readings held, one entry for each reading, oldest first. */
  List<String> readings(String rig) throws IOException, InterruptedException {
    List<String> held = new ArrayList<>();
    String after = "";
    while (true) {
      JsonNode page = asked("/api/rigs/" + rig + "/readings?limit=5000" + after);
      page.path("readings").forEach(reading -> held.add(reading.path("takenAt").asString()));
      if (!page.has("next")) {
        return held;
      }
      after = "&after=" + page.path("next").asString();
    }
  }

  boolean isPending(String rig) throws IOException, InterruptedException {
    return asked("/api/rigs/" + rig + "/cycle").path("pending").asBoolean(true);
  }

  /** The whole judgement of every rig, without the times of judging. */
  Map<String, String> judgements(List<String> rigs) throws IOException, InterruptedException {
    Map<String, String> all = new TreeMap<>();
    for (String rig : rigs) {
      for (String part : JUDGED) {
        all.put(rig + part, judged(rig, part));
      }
      all.put(rig + "/setups", withoutIds(rig, "/setups"));
      all.put(rig + "/calibrations", withoutIds(rig, "/calibrations"));
    }
    return all;
  }

  private String judged(String rig, String part) throws IOException, InterruptedException {
    long deadline = System.nanoTime() + LONGEST_JUDGING.toNanos();
    while (true) {
      ObjectNode body = (ObjectNode) asked("/api/rigs/" + rig + part);
      if (!body.path("pending").asBoolean(true)) {
        body.remove("judgedAt");
        for (JsonNode alert : body.path("alerts")) {
          ((ObjectNode) alert).remove("raisedAt");
        }
        return body.toString();
      }
      if (System.nanoTime() > deadline) {
        throw new IOException(rig + " was not judged within " + LONGEST_JUDGING);
      }
      Thread.sleep(100);
    }
  }

  /** Ids are numbers of a sequence, which counts what was undone as well. */
  private String withoutIds(String rig, String part) throws IOException, InterruptedException {
    JsonNode body = asked("/api/rigs/" + rig + part);
    body.forEach(entry -> ((ObjectNode) entry).remove("id"));
    return body.toString();
  }

  private JsonNode asked(String path) throws IOException, InterruptedException {
    Http.Reply reply = http.get(path);
    if (reply.status() != 200) {
      throw new IOException(path + " answered " + reply.status() + " " + reply.problem());
    }
    return reply.json();
  }
}
