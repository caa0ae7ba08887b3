package org.limbspan.intake;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.TooLarge;

/**
 * A CSV body (RFC 4180) with a header line, as spreadsheets of any country write it: comma,
 * semicolon or tab between fields, decimal commas where the comma is not the separator, any line
 * ending, with or without a byte-order mark.
 */
public final class CsvBody implements EntrySource {

  private static final int LONGEST_HEADER = 16_384;
  private static final int LONGEST_RECORD = 1 << 20;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final InputStream body;
  private final Charset charset;
  private final List<Set<String>> requiredColumns;

  /**
   * @param requiredColumns the header must have one of each set, by inner name
   */
  public CsvBody(InputStream body, Charset charset, List<Set<String>> requiredColumns) {
    this.body = body;
    this.charset = charset;
    this.requiredColumns = List.copyOf(requiredColumns);
  }

  @Override
  public Shape forEach(Consumer<Entry> action) throws IOException {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                body,
                charset
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)))) {
      read(reader, action);
      return Shape.LIST;
    } catch (CharacterCodingException e) {
      throw notInCharset();
    } catch (UncheckedIOException e) {
      if (e.getCause() instanceof CharacterCodingException) {
        throw notInCharset();
      }
      throw e.getCause();
    }
  }

  private void read(BufferedReader reader, Consumer<Entry> action) throws IOException {
    skipByteOrderMark(reader);
    char separator = separator(reader);
    QuoteCounter counter = new QuoteCounter(reader);
    try (CsvReader<CsvRecord> csv =
            CsvReader.builder()
                .fieldSeparator(separator)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .skipEmptyLines(true)
                .maxBufferSize(LONGEST_RECORD)
                .ofCsvRecord(counter);
        CloseableIterator<CsvRecord> records = csv.iterator()) {
      readRecords(records, separator, action);
    } catch (CsvParseException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      throw InvalidInput.unreadable(
          "The CSV file cannot be read: " + e.getMessage() + ". Nothing was stored.", List.of());
    }
    if (counter.isInsideQuotes()) {
      throw InvalidInput.unreadable(
          "The CSV file ends inside a quoted field: a quotation mark is missing, or the file was cut"
              + " short. Nothing was stored.",
          List.of());
    }
  }

  private void readRecords(
      CloseableIterator<CsvRecord> records, char separator, Consumer<Entry> action) {
    if (!records.hasNext()) {
      throw InvalidInput.unreadable("The CSV file is empty; expected a header line.", List.of());
    }
    CsvHeader header = CsvHeader.of(records.next().getFields(), separator);
    header.require(requiredColumns);
    int count = 0;
    while (records.hasNext()) {
      CsvRecord line = records.next();
      if (line.getFields().stream().allMatch(String::isBlank)) {
        continue;
      }
      count++;
      if (count > MOST_ENTRIES) {
        throw new TooLarge("More than " + MOST_ENTRIES + " lines; send them in parts.");
      }
      action.accept(header.entry(Math.toIntExact(line.getStartingLineNumber()), line.getFields()));
    }
  }

  private static void skipByteOrderMark(BufferedReader reader) throws IOException {
    reader.mark(1);
    if (reader.read() != BYTE_ORDER_MARK) {
      reader.reset();
    }
  }

  /** The separator that the header line holds most of; a comma if it holds none. */
  private static char separator(BufferedReader reader) throws IOException {
    reader.mark(LONGEST_HEADER);
    int commas = 0;
    int semicolons = 0;
    int tabs = 0;
    for (int i = 0; i < LONGEST_HEADER - 1; i++) {
      int read = reader.read();
      if (read < 0 || read == '\n' || read == '\r') {
        break;
      }
      commas += read == ',' ? 1 : 0;
      semicolons += read == ';' ? 1 : 0;
      tabs += read == '\t' ? 1 : 0;
    }
    reader.reset();
    if (semicolons > commas) {
      return semicolons >= tabs ? ';' : '\t';
    }
    return tabs > commas ? '\t' : ',';
  }

  private InvalidInput notInCharset() {
    return InvalidInput.unreadable(
        "The CSV file is not in "
            + charset
            + ": save it as UTF-8, or name its encoding in the Content-Type header. Nothing was"
            + " stored.",
        List.of());
  }
}
