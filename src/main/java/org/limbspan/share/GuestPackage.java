package org.limbspan.share;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Sha256;
import org.limbspan.platform.TooLarge;
import org.limbspan.platform.Violation;
import org.limbspan.sky.Axis;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Another observer's data package, read and checked; nothing of it is trusted.
 *
 * @param sha256 of the whole file, in hexadecimal
 */
record GuestPackage(SharedRig rig, String licence, List<SharedReading> readings, String sha256) {

  static final int MOST_BYTES = 32 << 20;
  static final int MOST_READINGS = 200_000;

  private static final int MOST_PROBLEMS = 50;
  private static final JsonMapper MAPPER = new JsonMapper();
  private static final String REFUSED = "This package cannot be loaded; nothing of it was stored.";

  /**
   * @param body of the zip file
   * @throws InvalidInput naming file, line and column of what is wrong
   * @throws TooLarge if it unpacks to more than 32 MiB or holds more than 200,000 readings
   */
  static GuestPackage read(byte[] body) throws IOException {
    Map<String, byte[]> files = unpacked(body);
    JsonNode description = json(files, Sharing.DESCRIPTION);
    check(description, files);
    SharedRig rig = rig(json(files, Sharing.RIG));
    JsonNode licence = description.path("licenses").path(0).path("name");
    if (licence.asString("").isBlank() || licence.asString("").length() > 100) {
      throw unfit(
          Sharing.DESCRIPTION + ": licenses[0].name", licence.asString(""), "a licence's name");
    }
    return new GuestPackage(
        rig,
        licence.asString(),
        readings(file(files, Sharing.READINGS)),
        HexFormat.of().formatHex(Sha256.of(body)));
  }

  private static Map<String, byte[]> unpacked(byte[] body) throws IOException {
    Map<String, byte[]> files = new HashMap<>();
    int left = MOST_BYTES;
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(body))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        byte[] bytes = most(zip, left);
        left -= bytes.length;
        files.put(entry.getName(), bytes);
        if (files.size() > 100) {
          throw new TooLarge("The package holds more than 100 files.");
        }
      }
    } catch (ZipException e) {
      throw unfit("body", "a damaged zip file", "a share.zip, whole");
    }
    if (files.isEmpty()) {
      throw unfit("body", "no zip file", "a share.zip");
    }
    return files;
  }

  private static byte[] most(InputStream input, int left) throws IOException {
    byte[] bytes = input.readNBytes(left + 1);
    if (bytes.length > left) {
      throw new TooLarge("The package unpacks to more than " + MOST_BYTES + " bytes.");
    }
    return bytes;
  }

  private static byte[] file(Map<String, byte[]> files, String name) {
    byte @Nullable [] bytes = files.get(name);
    if (bytes == null) {
      throw unfit(name, "not in the package", "a file of that name");
    }
    return bytes;
  }

  private static JsonNode json(Map<String, byte[]> files, String name) {
    try {
      return MAPPER.readTree(file(files, name));
    } catch (JacksonException e) {
      throw unfit(name, "unreadable", "JSON");
    }
  }

  /** Every file that is described must be there and be what its checksum says. */
  private static void check(JsonNode description, Map<String, byte[]> files) {
    Set<String> described = new HashSet<>();
    for (JsonNode resource : description.path("resources")) {
      String path = resource.path("path").asString("");
      String hash = "sha256:" + HexFormat.of().formatHex(Sha256.of(file(files, path)));
      String told = resource.path("hash").asString("");
      if (!hash.equals(told)) {
        throw unfit(path, hash, "the checksum that " + Sharing.DESCRIPTION + " gives, " + told);
      }
      described.add(path);
    }
    for (String needed : List.of(Sharing.READINGS, Sharing.RIG)) {
      if (!described.contains(needed)) {
        throw unfit(Sharing.DESCRIPTION + ": resources", "no " + needed, "a resource of that path");
      }
    }
  }

  private static SharedRig rig(JsonNode json) {
    String slug = json.path("slug").asString("");
    if (!slug.matches("[a-z0-9-]{1,40}")) {
      throw unfit(Sharing.RIG + ": slug", slug, "1 to 40 of a-z, 0-9 and '-'");
    }
    String name = json.path("name").asString("").strip();
    if (name.isEmpty() || name.length() > 200) {
      throw unfit(Sharing.RIG + ": name", name, "1 to 200 characters");
    }
    return new SharedRig(
        slug,
        name,
        number(json, "latitudeDeg", -90, 90),
        number(json, "longitudeDeg", -180, 180),
        number(json, "elevationM", -500, 9000),
        number(json, "positionDeg", 0, 10),
        List.of());
  }

  private static double number(JsonNode json, String field, double least, double most) {
    double value = json.path(field).asDouble(Double.NaN);
    if (!(value >= least && value <= most)) {
      throw unfit(
          Sharing.RIG + ": " + field,
          json.path(field).toString(),
          "a number from " + least + " to " + most);
    }
    return value;
  }

  private static List<SharedReading> readings(byte[] csv) {
    List<SharedReading> readings = new ArrayList<>();
    List<Violation> problems = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(text(csv))) {
      boolean header = true;
      for (CsvRecord record : reader) {
        int line = (int) record.getStartingLineNumber();
        if (header) {
          if (!record.getFields().equals(Sharing.COLUMNS)) {
            throw unfit(
                Sharing.READINGS + ": header",
                String.join(",", record.getFields()),
                String.join(",", Sharing.COLUMNS));
          }
          header = false;
          continue;
        }
        if (readings.size() >= MOST_READINGS) {
          throw new TooLarge("The package holds more than " + MOST_READINGS + " readings.");
        }
        read(record, line, keys, readings, problems);
        if (problems.size() >= MOST_PROBLEMS) {
          break;
        }
      }
    } catch (CsvParseException e) {
      throw unfit(Sharing.READINGS, "unreadable", "CSV by RFC 4180");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    if (!problems.isEmpty()) {
      throw InvalidInput.inBody(REFUSED, problems);
    }
    if (readings.isEmpty()) {
      throw unfit(Sharing.READINGS, "no reading", "one at least");
    }
    return readings;
  }

  private static String text(byte[] csv) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(csv)).toString();
    } catch (CharacterCodingException e) {
      throw unfit(Sharing.READINGS, "not UTF-8", "text in UTF-8");
    }
  }

  private static void read(
      CsvRecord record,
      int line,
      Set<String> keys,
      List<SharedReading> readings,
      List<Violation> problems) {
    if (record.getFieldCount() != Sharing.COLUMNS.size()) {
      problems.add(problem("columns", String.valueOf(record.getFieldCount()), "6", line));
      return;
    }
    int before = problems.size();
    Instant takenAt = instant(record.getField(0), line, problems);
    Axis axis = axis(record.getField(1), line, problems);
    double diameter = number(record, 2, 1, 600, line, problems);
    double uncertainty = number(record, 3, 1e-6, 60, line, problems);
    @Nullable Double altitude =
        record.getField(4).isEmpty() ? null : number(record, 4, -90, 90, line, problems);
    double setup = number(record, 5, 0, 100_000, line, problems);
    if (problems.size() == before && uncertainty >= diameter) {
      problems.add(
          problem("uncertainty_arcmin", record.getField(3), "less than the diameter", line));
    }
    if (problems.size() == before && !keys.add(takenAt + " " + axis)) {
      problems.add(problem("taken_at", record.getField(0), "each instant and axis once", line));
    }
    if (problems.size() == before) {
      readings.add(new SharedReading(takenAt, axis, diameter, uncertainty, altitude, (int) setup));
    }
  }

  private static Instant instant(String value, int line, List<Violation> problems) {
    try {
      return Instant.parse(value);
    } catch (DateTimeException e) {
      problems.add(problem("taken_at", value, "an instant in UTC, ISO 8601 with Z", line));
      return Instant.EPOCH;
    }
  }

  private static Axis axis(String value, int line, List<Violation> problems) {
    return Arrays.stream(Axis.values())
        .filter(axis -> axis.label().equals(value))
        .findFirst()
        .orElseGet(
            () -> {
              problems.add(problem("axis", value, "horizontal, vertical or limb-fit", line));
              return Axis.HORIZONTAL;
            });
  }

  private static double number(
      CsvRecord record, int column, double least, double most, int line, List<Violation> problems) {
    double value = Double.NaN;
    try {
      value = Double.parseDouble(record.getField(column));
    } catch (NumberFormatException e) {
      // said below, as any other value out of range
    }
    if (!(value >= least && value <= most)) {
      problems.add(
          problem(
              Sharing.COLUMNS.get(column),
              record.getField(column),
              "a number from " + least + " to " + most,
              line));
    }
    return value;
  }

  private static Violation problem(String column, String value, String expected, int line) {
    return new Violation(Sharing.READINGS + ": " + column, value, expected).atLine(line);
  }

  private static InvalidInput unfit(String field, String value, String expected) {
    return InvalidInput.inBody(REFUSED, List.of(new Violation(field, value, expected)));
  }
}
