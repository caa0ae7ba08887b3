package org.limbspan.cycle;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A folder of {@code reference/readings} as a service would see it: logged instants, logged axes,
 * one plate scale per setup from its calibrations (plain mean, target as stated).
 */
record RigFixture(
    String folder, Site site, List<Observation> observations, List<Double> scaleUncertainty) {

  private static final JsonMapper JSON = new JsonMapper();

  static RigFixture of(String folder) {
    JsonNode rig = json(folder + "/rig.json");
    Site site =
        new Site(
            rig.get("latitudeDeg").asDouble(),
            rig.get("longitudeDeg").asDouble(),
            rig.get("elevationM").asDouble());
    List<Instant> starts = new ArrayList<>();
    json(folder + "/setups.json")
        .forEach(setup -> starts.add(Instant.parse(setup.get("startedAt").asString())));
    List<Double> scales = new ArrayList<>();
    List<Double> scaleUncertainty = new ArrayList<>();
    List<NamedCsvRecord> calibrations = csv(folder + "/calibrations.csv");
    for (int s = 0; s < starts.size(); s++) {
      int setup = s;
      double[] own =
          calibrations.stream()
              .filter(c -> setupAt(starts, Instant.parse(c.getField("taken_at"))) == setup)
              .mapToDouble(RigFixture::arcsecPerPx)
              .toArray();
      scales.add(Arrays.stream(own).average().orElseThrow());
      scaleUncertainty.add(Math.hypot(0.001, 0.0004) / Math.sqrt(own.length));
    }
    List<Observation> observations = new ArrayList<>();
    for (NamedCsvRecord line : csv(folder + "/readings.csv")) {
      Observation next = observation(line, site, starts, scales);
      if (observations.stream().noneMatch(o -> o.takenAt().equals(next.takenAt()))) {
        observations.add(next);
      }
    }
    return new RigFixture(folder, site, observations, scaleUncertainty);
  }

  private static Observation observation(
      NamedCsvRecord line, Site site, List<Instant> starts, List<Double> scales) {
    Instant at = OffsetDateTime.parse(line.getField("taken_at")).toInstant();
    double diameterPx = Double.parseDouble(line.getField("diameter_px"));
    int setup = setupAt(starts, at);
    return new Observation(
        at,
        Axis.ofLabel(line.getField("axis")),
        diameterPx * scales.get(setup) / 60,
        Double.parseDouble(line.getField("uncertainty_px")) / diameterPx,
        SkyFixture.sky().moonAt(at, site),
        setup,
        new Sighted(optional(line, "altitude_deg"), optional(line, "azimuth_deg")));
  }

  private static OptionalDouble optional(NamedCsvRecord line, String field) {
    String text = line.getField(field);
    return text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
  }

  private static double arcsecPerPx(NamedCsvRecord c) {
    double lengthMm = Double.parseDouble(c.getField("target_length_mm"));
    double distanceMm = 1000 * Double.parseDouble(c.getField("target_distance_m"));
    double arcsec = 3600 * Math.toDegrees(2 * Math.atan(lengthMm / (2 * distanceMm)));
    return arcsec / Double.parseDouble(c.getField("measured_px"));
  }

  private static int setupAt(List<Instant> starts, Instant at) {
    int setup = 0;
    while (setup + 1 < starts.size() && !at.isBefore(starts.get(setup + 1))) {
      setup++;
    }
    return setup;
  }

  private static List<NamedCsvRecord> csv(String name) {
    try (CsvReader<NamedCsvRecord> reader =
        CsvReader.builder()
            .ofNamedCsvRecord(new InputStreamReader(open(name), StandardCharsets.UTF_8))) {
      return reader.stream().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static JsonNode json(String name) {
    try (InputStream in = open(name)) {
      return JSON.readTree(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static InputStream open(String name) {
    return Objects.requireNonNull(
        RigFixture.class.getResourceAsStream("/reference/readings/" + name), name);
  }

  /** The same in another setup, its size times a factor. */
  static Observation with(Observation o, int setup, double factor) {
    return new Observation(
        o.takenAt(),
        o.axis(),
        o.observedArcmin() * factor,
        o.relativeUncertainty(),
        o.sight(),
        setup,
        o.sighted());
  }
}
