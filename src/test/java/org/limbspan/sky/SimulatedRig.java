package org.limbspan.sky;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A folder of {@code reference/readings}: the site and the truth its simulator wrote. */
record SimulatedRig(String folder, Site site, Axis axis, List<Truth> readings) {

  static final List<String> FOLDERS =
      List.of(
          "calibration-at-49m",
          "clean-hourly",
          "clean-pairs",
          "clean-triples-3y",
          "declared-change",
          "drift-0.1",
          "local-time-as-utc",
          "near-moon-world",
          "scatter-x3",
          "sent-twice",
          "step-0.5",
          "step-minus-1",
          "vertical-as-horizontal");

  private static final JsonMapper JSON = new JsonMapper();

  /** What was true when a reading was taken. */
  record Truth(
      Instant at,
      double geocentricKm,
      double topocentricKm,
      double topocentricDiameterArcsec,
      double loggedAxisDiameterArcsec,
      double apparentAltitudeDeg,
      double azimuthDeg) {}

  static SimulatedRig of(String folder) {
    JsonNode rig = read(folder + "/rig.json");
    JsonNode truth = read(folder + "/truth.json");
    JsonNode readings = truth.get("readings");
    List<Truth> truths = new ArrayList<>();
    for (int i = 0; i < readings.get("row").size(); i++) {
      truths.add(
          new Truth(
              Instant.parse(readings.get("trueTakenAt").get(i).asString()),
              readings.get("geocentricKm").get(i).asDouble(),
              readings.get("topocentricKm").get(i).asDouble(),
              readings.get("topocentricDiameterArcsec").get(i).asDouble(),
              readings.get("loggedAxisDiameterArcsec").get(i).asDouble(),
              readings.get("apparentAltitudeDeg").get(i).asDouble(),
              readings.get("azimuthDeg").get(i).asDouble()));
    }
    Site site =
        new Site(
            rig.get("latitudeDeg").asDouble(),
            truth.get("trueLongitudeDeg").asDouble(),
            rig.get("elevationM").asDouble());
    return new SimulatedRig(folder, site, Axis.ofLabel(truth.get("axis").asString()), truths);
  }

  private static JsonNode read(String name) {
    try (InputStream in =
        Objects.requireNonNull(
            SimulatedRig.class.getResourceAsStream("/reference/readings/" + name), name)) {
      return JSON.readTree(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
