package org.limbspan.archive;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerFile;
import org.limbspan.platform.LedgerType;

/** {@code original.csv}: the files in the zip beside the tables, one a line. */
final class OriginalList {

  static final String NAME = "original";
  static final String FILE_NAME = NAME + ".csv";
  static final String FOLDER = "originals/";
  static final String TITLE =
      "The photographs' files in this zip, as their cameras wrote them, named by their hash.";

  static final List<LedgerColumn> COLUMNS =
      List.of(
          LedgerColumn.required("path", LedgerType.STRING, "name in the zip"),
          LedgerColumn.required("byte_count", LedgerType.INTEGER, "length, bytes"),
          LedgerColumn.required("sha256", LedgerType.STRING, "SHA-256, hexadecimal"));

  private static final String HEADER = "path,byte_count,sha256\n";

  private OriginalList() {}

  /** Takes a line. */
  interface Lines {
    void take(long line, LedgerFile file) throws IOException;
  }

  static String header() {
    return HEADER;
  }

  /** No field needs quotes. */
  static String line(LedgerFile file) {
    return FOLDER + file.name() + "," + file.bytes() + "," + file.sha256() + "\n";
  }

  static String path(LedgerFile file) {
    return FOLDER + file.name();
  }

  /**
   * Reads a list, line by line.
   *
   * @throws org.limbspan.platform.InvalidInput if it is none
   */
  static void read(InputStream csv, Lines lines) throws IOException {
    try (CsvReader<CsvRecord> reader =
        CsvReader.builder().ofCsvRecord(new InputStreamReader(csv, StandardCharsets.UTF_8))) {
      for (CsvRecord record : reader) {
        long line = record.getStartingLineNumber();
        if (line == 1) {
          requireHeader(record);
        } else {
          lines.take(line, file(line, record));
        }
      }
    } catch (CsvParseException | UncheckedIOException e) {
      throw Unfit.file(
          FILE_NAME, "unreadable", "CSV (RFC 4180) with the columns " + HEADER.strip());
    }
  }

  private static void requireHeader(CsvRecord record) {
    String header = String.join(",", record.getFields());
    if (!header.equals(HEADER.strip())) {
      throw Unfit.file(FILE_NAME, header, HEADER.strip());
    }
  }

  private static LedgerFile file(long line, CsvRecord record) {
    List<String> fields = record.getFields();
    if (fields.size() == COLUMNS.size()
        && fields.get(0).startsWith(FOLDER)
        && fields.get(1).matches("[1-9][0-9]{0,17}")) {
      return new LedgerFile(
          fields.get(0).substring(FOLDER.length()), Long.parseLong(fields.get(1)), fields.get(2));
    }
    throw Unfit.line(
        FILE_NAME, line, String.join(",", fields), "a path in originals/, a length, a hash");
  }
}
