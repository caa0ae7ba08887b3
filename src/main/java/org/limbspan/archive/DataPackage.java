package org.limbspan.archive;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.limbspan.archive.ArchiveWriter.WrittenPart;
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
  static final int LAYOUT = 1;

  private static final String LAYOUT_FIELD = "limbspanLayout";

  private final JsonMapper mapper =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  byte[] json(Rig rig, List<WrittenPart> written) {
    Map<String, Object> description = new LinkedHashMap<>();
    description.put("profile", "tabular-data-package");
    description.put("name", "ledger-" + rig.slug());
    description.put("title", "Apparent size of the Moon: ledger of the rig " + rig.name());
    description.put(LAYOUT_FIELD, LAYOUT);
    description.put("resources", written.stream().map(DataPackage::resource).toList());
    return mapper.writeValueAsBytes(description);
  }

  private static Map<String, Object> resource(WrittenPart written) {
    LedgerPart part = written.part();
    Map<String, Object> resource = new LinkedHashMap<>();
    resource.put("profile", "tabular-data-resource");
    resource.put("name", part.name());
    resource.put("path", ArchiveParts.fileName(part));
    resource.put("title", part.title());
    resource.put("format", "csv");
    resource.put("mediatype", "text/csv");
    resource.put("encoding", "utf-8");
    resource.put("bytes", written.bytes());
    resource.put("hash", "sha256:" + written.sha256());
    resource.put("dialect", Map.of("lineTerminator", "\n"));
    resource.put("schema", schema(part));
    return resource;
  }

  private static Map<String, Object> schema(LedgerPart part) {
    List<Map<String, Object>> fields = new ArrayList<>();
    for (LedgerColumn column : part.columns()) {
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
  String words(Rig rig, List<WrittenPart> written) {
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
    return words.toString();
  }

  /** Hash of each file that {@code json} describes. */
  Map<String, String> hashes(byte[] json) {
    JsonNode description;
    try {
      description = mapper.readTree(json);
    } catch (JacksonException e) {
      throw Unfit.file(FILE_NAME, "unreadable", "JSON");
    }
    JsonNode layout = description.path(LAYOUT_FIELD);
    if (layout.asInt(0) != LAYOUT) {
      throw Unfit.file(FILE_NAME + ": " + LAYOUT_FIELD, layout.toString(), String.valueOf(LAYOUT));
    }
    Map<String, String> hashes = new LinkedHashMap<>();
    for (JsonNode resource : description.path("resources")) {
      hashes.put(resource.path("path").asString(""), resource.path("hash").asString(""));
    }
    return hashes;
  }
}
