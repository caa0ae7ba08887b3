package org.limbspan.drift;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A folder of {@code reference/readings} as the judgement takes it, and its truth. */
record SimulatedHistory(RigHistory rig, JsonNode truth) {

  private static final String ROOT = "/reference/readings/";
  private static final JsonMapper JSON = new JsonMapper();

  private record Calibration(Instant at, double scale, double independent, double common) {}

  static SimulatedHistory of(String folder) {
    JsonNode rig = json(folder + "/rig.json");
    Site site =
        new Site(
            rig.get("latitudeDeg").asDouble(),
            rig.get("longitudeDeg").asDouble(),
            rig.get("elevationM").asDouble());
    List<Instant> starts = new ArrayList<>();
    json(folder + "/setups.json").forEach(s -> starts.add(instant(s.get("startedAt").asString())));
    List<Calibration> calibrations = calibrations(folder);
    List<SetupHistory> setups = new ArrayList<>();
    for (int i = 0; i < starts.size(); i++) {
      Optional<Instant> to =
          i + 1 < starts.size() ? Optional.of(starts.get(i + 1)) : Optional.empty();
      setups.add(setup(folder, site, i, starts.get(i), to, calibrations));
    }
    ZoneId zone = ZoneId.of(rig.get("timeZone").asString());
    return new SimulatedHistory(new RigHistory(site, zone, setups), json(folder + "/truth.json"));
  }

  private static SetupHistory setup(
      String folder,
      Site site,
      int number,
      Instant from,
      Optional<Instant> to,
      List<Calibration> all) {
    List<Calibration> own = all.stream().filter(each -> within(each.at(), from, to)).toList();
    double sum = 0;
    double weights = 0;
    for (Calibration each : own) {
      double weight = 1 / (each.independent() * each.independent());
      sum += weight * each.scale();
      weights += weight;
    }
    double scale = sum / weights;
    List<CalibrationPoint> points =
        own.stream()
            .map(
                each ->
                    new CalibrationPoint(
                        each.at(),
                        Math.log(each.scale() / scale),
                        each.independent(),
                        each.common()))
            .toList();
    Set<Observation> observations = new LinkedHashSet<>();
    for (NamedCsvRecord row : csv(folder + "/readings.csv")) {
      Instant at = instant(row.getField("taken_at"));
      if (within(at, from, to)) {
        double px = Double.parseDouble(row.getField("diameter_px"));
        observations.add(
            new Observation(
                at,
                Axis.ofLabel(row.getField("axis")),
                px * scale / 60,
                Double.parseDouble(row.getField("uncertainty_px")) / px,
                SkyFixture.sky().moonAt(at, site),
                number,
                new Sighted(
                    number(row.getField("altitude_deg")), number(row.getField("azimuth_deg")))));
      }
    }
    return new SetupHistory(number, Optional.of(from), to, points, List.copyOf(observations));
  }

  private static List<Calibration> calibrations(String folder) {
    List<Calibration> calibrations = new ArrayList<>();
    for (NamedCsvRecord row : csv(folder + "/calibrations.csv")) {
      double lengthM = value(row, "target_length_mm") / 1000;
      double distanceM = value(row, "target_distance_m");
      double px = value(row, "measured_px");
      double arcsec = Math.toDegrees(2 * Math.atan(lengthM / (2 * distanceM))) * 3600;
      calibrations.add(
          new Calibration(
              instant(row.getField("taken_at")),
              arcsec / px,
              Math.hypot(
                  value(row, "measured_uncertainty_px") / px,
                  value(row, "target_distance_uncertainty_m") / distanceM),
              value(row, "target_length_uncertainty_mm") / 1000 / lengthM));
    }
    return calibrations;
  }

  private static double value(NamedCsvRecord row, String name) {
    return Double.parseDouble(row.getField(name));
  }

  private static boolean within(Instant at, Instant from, Optional<Instant> to) {
    return !at.isBefore(from) && (to.isEmpty() || at.isBefore(to.get()));
  }

  private static OptionalDouble number(String field) {
    return field.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(field));
  }

  private static Instant instant(String text) {
    return OffsetDateTime.parse(text).toInstant();
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
    return Objects.requireNonNull(SimulatedHistory.class.getResourceAsStream(ROOT + name), name);
  }
}
