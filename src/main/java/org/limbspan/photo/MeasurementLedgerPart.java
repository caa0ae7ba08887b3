package org.limbspan.photo;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** What every method made of every photograph. */
@Component
class MeasurementLedgerPart implements LedgerPart {

  private static final String FIGURES =
      """
      method, outcome, reason, horizontal_px, horizontal_own_px, horizontal_shared_px,
      vertical_px, vertical_own_px, vertical_shared_px
      """;

  private static final int ROWS_AT_ONCE = 100;

  private final JsonMapper json;

  MeasurementLedgerPart(JsonMapper json) {
    this.json = json;
  }

  @Override
  public Order order() {
    return Order.PHOTO_MEASUREMENTS;
  }

  @Override
  public int sinceLayout() {
    return PhotoLedgerPart.LAYOUT;
  }

  @Override
  public String name() {
    return "photo_measurement";
  }

  @Override
  public String title() {
    return "What was measured on photographs, once for each version of the method; the greatest"
        + " counts.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("sha256", LedgerType.STRING, "SHA-256 of the photograph's file"),
        required("photo_version", LedgerType.INTEGER, "version of the photograph's entry"),
        required("method", LedgerType.INTEGER, "version of the method"),
        required("outcome", LedgerType.STRING, "measured or refused"),
        optional("reason", LedgerType.STRING, "why it was refused"),
        optional("horizontal_px", LedgerType.NUMBER, "diameter along the horizon, pixels"),
        optional(
            "horizontal_own_px",
            LedgerType.NUMBER,
            "part of its standard uncertainty that is of this photograph alone"),
        optional(
            "horizontal_shared_px", LedgerType.NUMBER, "part that others of the minutes share"),
        optional("vertical_px", LedgerType.NUMBER, "diameter across the horizon, pixels"),
        optional("vertical_own_px", LedgerType.NUMBER, "as above"),
        optional("vertical_shared_px", LedgerType.NUMBER, "as above"),
        optional("document", LedgerType.STRING, "centre, outline, arcs and the rest, as JSON"),
        required("measured_at", LedgerType.DATETIME, "when it was measured"));
  }

  @Override
  public List<String> key() {
    return List.of("sha256", "photo_version", "method");
  }

  @Override
  public String select(long rigId) {
    return """
    select p.sha256, p.version as photo_version, %s, document, measured_at
    from photo_measurement m join photo p on p.id = m.photo_id
    where p.rig_id = %d
    order by p.id, m.method
    """
        .formatted(FIGURES.strip(), rigId);
  }

  /** A row without its photograph breaks the rule that there is one. */
  @Override
  public String insert(String staged, long rigId) {
    return """
    insert into photo_measurement (photo_id, %1$s, document, measured_at)
    select p.id, %1$s, cast(f.document as jsonb), f.measured_at
    from %3$s f
    left join photo p on p.rig_id = %2$d and p.sha256 = f.sha256 and p.version = f.photo_version
    order by f.line
    """
        .formatted(FIGURES.strip(), rigId, staged);
  }

  /** What cannot be read back would be in the way of every page that shows it. */
  @Override
  public void prepare(String staged, JdbcClient jdbc) {
    try (Stream<String> documents =
        jdbc
            .sql("select document from " + staged + " where document is not null order by line")
            .withFetchSize(ROWS_AT_ONCE)
            .query(String.class)
            .stream()) {
      for (Iterator<String> each = documents.iterator(); each.hasNext(); ) {
        requireReadable(each.next());
      }
    }
  }

  private void requireReadable(String document) {
    try {
      json.readValue(document, DiscFigures.class);
    } catch (JacksonException | NullPointerException | IllegalArgumentException e) {
      throw InvalidInput.inBody(
          "photo_measurement.csv: document", document, "what was measured, as JSON");
    }
  }
}
