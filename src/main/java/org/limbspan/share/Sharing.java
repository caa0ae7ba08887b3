package org.limbspan.share;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.Sha256;
import org.limbspan.reading.Readings;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.rig.Setup;
import org.limbspan.sky.Site;
import org.springframework.stereotype.Component;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Makes a data package of a rig: {@code datapackage.json} by the Frictionless Data Package
 * specification, version 1, with a CSV of its readings in arcminutes, a JSON of the rig, and notes
 * on the method. Left out are notes, photographs and readings without a calibration of their own.
 */
@Component
class Sharing {

  static final String DESCRIPTION = "datapackage.json";
  static final String READINGS = "readings.csv";
  static final String RIG = "rig.json";
  static final String NOTES = "methods.md";
  static final List<String> COLUMNS =
      List.of("taken_at", "axis", "diameter_arcmin", "uncertainty_arcmin", "altitude_deg", "setup");

  private static final double ELEVATION_STEP_M = 100;

  private final Rigs rigs;
  private final Readings readings;
  private final JsonMapper mapper =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  Sharing(Rigs rigs, Readings readings) {
    this.rigs = rigs;
    this.readings = readings;
  }

  byte[] zip(Rig rig, Licence licence, double positionDeg) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    SharedRig shared = shared(rig, positionDeg);
    files.put(READINGS, csv(readings.standardised(rig.id())));
    files.put(RIG, mapper.writeValueAsBytes(shared));
    files.put(NOTES, notes(shared, licence).getBytes(StandardCharsets.UTF_8));
    Map<String, byte[]> all = new LinkedHashMap<>();
    all.put(DESCRIPTION, mapper.writeValueAsBytes(description(shared, licence, files)));
    all.putAll(files);
    return zipped(all);
  }

  private SharedRig shared(Rig rig, double positionDeg) {
    InstrumentHistory history = rigs.history(rig);
    List<Double> scales = new ArrayList<>();
    for (Setup setup : history.setups()) {
      scales.add(
          history.scaleOf(setup).map(m -> 100 * m.scale().relativeUncertainty()).orElse(-1.0));
    }
    Site site = rig.site();
    return new SharedRig(
        rig.slug(),
        rig.name(),
        rounded(site.latitudeDeg(), positionDeg),
        rounded(site.longitudeDeg(), positionDeg),
        rounded(site.elevationM(), positionDeg > 0 ? ELEVATION_STEP_M : 0),
        positionDeg,
        scales);
  }

  /** To a multiple of {@code step}, without the tail that binary numbers leave. */
  private static double rounded(double value, double step) {
    return step == 0 ? value : Math.round(Math.rint(value / step) * step * 1e6) / 1e6;
  }

  private static byte[] csv(List<StandardisedReading> standardised) {
    StringWriter text = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      csv.writeRecord(COLUMNS);
      for (StandardisedReading each : standardised) {
        Double altitude = each.reading().circumstances().altitudeDeg();
        csv.writeRecord(
            each.reading().takenAt().toString(),
            each.reading().axis().label(),
            String.valueOf(each.diameterArcmin()),
            String.valueOf(each.diameterArcmin() * each.relativeUncertainty()),
            altitude == null ? "" : String.valueOf(altitude),
            String.valueOf(each.setup()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static Map<String, Object> description(
      SharedRig rig, Licence licence, Map<String, byte[]> files) {
    Map<String, Object> description = new LinkedHashMap<>();
    description.put("profile", "data-package");
    description.put("name", "moon-" + rig.slug());
    description.put("title", "Apparent size of the Moon: " + rig.name());
    description.put(
        "licenses",
        List.of(
            Map.of("name", licence.spdx(), "path", licence.address(), "title", licence.spdx())));
    List<Map<String, Object>> resources = new ArrayList<>();
    Map<String, Object> table = resource("readings", READINGS, "csv", files);
    table.put("profile", "tabular-data-resource");
    table.put("schema", schema());
    resources.add(table);
    resources.add(resource("rig", RIG, "json", files));
    resources.add(resource("methods", NOTES, "md", files));
    description.put("resources", resources);
    return description;
  }

  private static Map<String, Object> resource(
      String name, String path, String format, Map<String, byte[]> files) {
    byte[] bytes = file(files, path);
    Map<String, Object> resource = new LinkedHashMap<>();
    resource.put("name", name);
    resource.put("path", path);
    resource.put("format", format);
    resource.put("encoding", "utf-8");
    resource.put("bytes", bytes.length);
    resource.put("hash", "sha256:" + HexFormat.of().formatHex(Sha256.of(bytes)));
    return resource;
  }

  private static byte[] file(Map<String, byte[]> files, String path) {
    byte @Nullable [] bytes = files.get(path);
    if (bytes == null) {
      throw new IllegalStateException(path + " was not made");
    }
    return bytes;
  }

  private static Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put(
        "fields",
        List.of(
            field("taken_at", "datetime", "instant of the reading, UTC", true, "any"),
            field("axis", "string", "horizontal, vertical or limb-fit", true, "default"),
            field("diameter_arcmin", "number", "apparent diameter, arcminutes", true, "default"),
            field(
                "uncertainty_arcmin",
                "number",
                "standard uncertainty of the reading alone, without the plate scale's",
                true,
                "default"),
            field(
                "altitude_deg",
                "number",
                "altitude as sighted, degrees; may be empty",
                false,
                "default"),
            field("setup", "integer", "number of the setup, from 0", true, "default")));
    schema.put("primaryKey", List.of("taken_at", "axis"));
    schema.put("missingValues", List.of(""));
    return schema;
  }

  private static Map<String, Object> field(
      String name, String type, String words, boolean required, String format) {
    Map<String, Object> field = new LinkedHashMap<>();
    field.put("name", name);
    field.put("type", type);
    field.put("format", format);
    field.put("description", words);
    if (required) {
      field.put("constraints", Map.of("required", true));
    }
    return field;
  }

  private static String notes(SharedRig rig, Licence licence) {
    return """
        # Apparent size of the Moon: %s

        Readings of the Moon's apparent diameter by one fixed camera, in arcminutes. Licence: %s
        (%s).

        * Diameters are pixels or millimetres times the plate scale of their setup; the scale's own
          uncertainty, the same for all readings of a setup, stands in rig.json in percent.
        * uncertainty_arcmin is the standard uncertainty of the reading alone (JCGM 100:2008).
        * axis tells along which direction the disc was measured: refraction flattens the vertical
          one.
        * Latitude and longitude are %s.
        * Readings without a calibration of their own, notes and photographs are left out.
        * Nothing computed is in here.
        """
        .formatted(
            rig.name(),
            licence.spdx(),
            licence.address(),
            rig.positionDeg() == 0
                ? "exact"
                : "rounded to "
                    + rig.positionDeg()
                    + " degrees, a standard uncertainty of "
                    + Math.round(1000 * rig.positionDeg() / Math.sqrt(12)) / 1000.0
                    + " degrees each");
  }

  private static byte[] zipped(Map<String, byte[]> files) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        ZipEntry entry = new ZipEntry(file.getKey());
        entry.setTime(0);
        zip.putNextEntry(entry);
        zip.write(file.getValue());
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
