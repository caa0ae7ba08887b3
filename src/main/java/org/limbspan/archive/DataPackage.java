package org.limbspan.archive;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.limbspan.rig.Rig;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** {@code datapackage.json} by the Frictionless Data Package specification, version 1. */
@Component
class DataPackage {

  static final String FILE_NAME = "datapackage.json";

  /** Version of the layout of the parts. */
  static final int LAYOUT = 2;

  private static final String LAYOUT_FIELD = "limbspanLayout";

  private final JsonMapper mapper =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  /** A part as it went out. */
  record WrittenPart(LedgerPart part, long bytes, String sha256) {}

  /** The files named in {@link OriginalList}, if they are sent along. */
  record Originals(long count, long listBytes, String listSha256) {}

  byte[] json(Rig rig, List<WrittenPart> written, @Nullable Originals originals) {
    Map<String, Object> description = new LinkedHashMap<>();
    description.put("profile", "tabular-data-package");
    description.put("name", "ledger-" + rig.slug());
    description.put("title", "Apparent size of the Moon: ledger of the rig " + rig.name());
    description.put(LAYOUT_FIELD, LAYOUT);
    List<Map<String, Object>> resources = new ArrayList<>();
    written.forEach(each -> resources.add(resource(each)));
    if (originals != null) {
      resources.add(resource(originals));
    }
    description.put("resources", resources);
    return mapper.writeValueAsBytes(description);
  }

  private static Map<String, Object> resource(WrittenPart written) {
    LedgerPart part = written.part();
    return resource(part.name(), part.title(), written.bytes(), written.sha256(), part.columns());
  }

  private static Map<String, Object> resource(Originals originals) {
    return resource(
        OriginalList.NAME,
        OriginalList.TITLE,
        originals.listBytes(),
        originals.listSha256(),
        OriginalList.COLUMNS);
  }

  private static Map<String, Object> resource(
      String name, String title, long bytes, String sha256, List<LedgerColumn> columns) {
    Map<String, Object> resource = new LinkedHashMap<>();
    resource.put("profile", "tabular-data-resource");
    resource.put("name", name);
    resource.put("path", name + ".csv");
    resource.put("title", title);
    resource.put("format", "csv");
    resource.put("mediatype", "text/csv");
    resource.put("encoding", "utf-8");
    resource.put("bytes", bytes);
    resource.put("hash", "sha256:" + sha256);
    resource.put("dialect", Map.of("lineTerminator", "\n"));
    resource.put("schema", schema(columns));
    return resource;
  }

  private static Map<String, Object> schema(List<LedgerColumn> columns) {
    List<Map<String, Object>> fields = new ArrayList<>();
    for (LedgerColumn column : columns) {
      Map<String, Object> field = new LinkedHashMap<>();
      field.put("name", column.name());
      field.put("type", column.type().open());
      if (column.type() == LedgerType.DATETIME) {
        field.put("format", "%Y-%m-%dT%H:%M:%S.%fZ");
      }
      field.put("description", column.description());
      if (column.required()) {
        field.put("constraints", Map.of("required", true));
      }
      fields.add(field);
    }
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("fields", fields);
    schema.put("missingValues", List.of(""));
    return schema;
  }

  /** The same for a reader without programs. */
  String words(Rig rig, List<WrittenPart> written, @Nullable Originals originals) {
    StringBuilder words = new StringBuilder();
    words
        .append("Ledger of the rig ")
        .append(rig.name())
        .append(" (")
        .append(rig.slug())
        .append(
            ")\n\nReadings of the Moon's apparent diameter with all that belongs to them, as they"
                + " were\nentered. Nothing is ever overwritten: a correction is a new version, a"
                + " withdrawal says\nwhy. Predictions, residuals and conclusions are not in here;"
                + " they follow from these\nfacts and a table of the Moon. Instants are in UTC. The"
                + " columns are described in\n")
        .append(FILE_NAME)
        .append(", with the SHA-256 of each file.\n");
    for (WrittenPart each : written) {
      words
          .append('\n')
          .append(ArchiveParts.fileName(each.part()))
          .append("\n  ")
          .append(each.part().title())
          .append('\n');
    }
    words.append(
        originals == null
            ? "\nThe photographs' files are not in here; ask for them with ?photographs=true.\n"
            : "\n%s.csv\n  %s\n".formatted(OriginalList.NAME, OriginalList.TITLE));
    return words.toString();
  }

  /**
   * What a description promises.
   *
   * @param hashes of each file, by name, with the algorithm before a colon
   */
  record Promised(int layout, Map<String, String> hashes) {}

  Promised promised(byte[] json) {
    JsonNode description;
    try {
      description = mapper.readTree(json);
    } catch (JacksonException e) {
      throw Unfit.file(FILE_NAME, "unreadable", "JSON");
    }
    JsonNode layout = description.path(LAYOUT_FIELD);
    if (layout.asInt(0) < 1 || layout.asInt(0) > LAYOUT) {
      throw Unfit.file(
          FILE_NAME + ": " + LAYOUT_FIELD, layout.toString(), "a layout from 1 to " + LAYOUT);
    }
    Map<String, String> hashes = new LinkedHashMap<>();
    for (JsonNode resource : description.path("resources")) {
      hashes.put(resource.path("path").asString(""), resource.path("hash").asString(""));
    }
    return new Promised(layout.asInt(), hashes);
  }
}
