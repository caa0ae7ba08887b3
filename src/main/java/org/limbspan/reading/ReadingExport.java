package org.limbspan.reading;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.limbspan.rig.Predictions;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/** Writes readings as CSV (RFC 4180) row by row, however many there are. */
@Component
class ReadingExport {

  private final ReadingStore store;
  private final Rigs rigs;
  private final Sky sky;
  private final Predictions predictions;
  private final TransactionTemplate transaction;

  ReadingExport(
      ReadingStore store,
      Rigs rigs,
      Sky sky,
      Predictions predictions,
      PlatformTransactionManager transactions) {
    this.store = store;
    this.rigs = rigs;
    this.sky = sky;
    this.predictions = predictions;
    this.transaction = new TransactionTemplate(transactions);
    this.transaction.setReadOnly(true);
  }

  /** Writes what stands in the span; a cursor of the database lives within one transaction. */
  void write(Rig rig, ReadingSpan span, OutputStream output) throws IOException {
    Writer writer = new OutputStreamWriter(output, StandardCharsets.UTF_8);
    CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(writer);
    csv.writeRecord(ReadingCsv.header());
    transaction.executeWithoutResult(status -> writeRows(rig, span, csv));
    csv.flush();
    writer.flush();
  }

  private void writeRows(Rig rig, ReadingSpan span, CsvWriter csv) {
    Annotator annotator =
        new Annotator(new Standardiser(rigs.history(rig), sky::moonAt), predictions);
    try (Stream<RecordedReading> readings = store.stream(rig.id(), span)) {
      readings.map(annotator::annotate).map(ReadingCsv::row).forEach(csv::writeRecord);
    }
  }
}
