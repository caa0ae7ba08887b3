package org.limbspan.watch;

import static org.limbspan.platform.LedgerColumn.required;

import java.util.List;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** Alerts as last judged: they follow from the facts, but for when they were raised and settled. */
@Component
class AlertLedgerPart implements LedgerPart {

  private static final String COLUMNS =
      "id, kind, onset_from, onset_to, evidence_at, raised_at, standing, document";

  private final JsonMapper json;

  AlertLedgerPart(JsonMapper json) {
    this.json = json;
  }

  @Override
  public Order order() {
    return Order.ALERTS;
  }

  @Override
  public String name() {
    return "alert";
  }

  @Override
  public String title() {
    return "Alerts as last judged, so that it stays known when each was first raised, and settled.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("id", LedgerType.STRING, "identity, a function of rig, kind, setup and evidence"),
        required("kind", LedgerType.STRING, "kind"),
        required("onset_from", LedgerType.DATETIME, "begin of the interval of the onset"),
        required("onset_to", LedgerType.DATETIME, "its end"),
        required(
            "evidence_at", LedgerType.DATETIME, "the reading with which the evidence was enough"),
        required("raised_at", LedgerType.DATETIME, "when it was raised"),
        required("standing", LedgerType.BOOLEAN, "whether the last judgement still finds it"),
        required("document", LedgerType.STRING, "all of it, as JSON"));
  }

  @Override
  public List<String> key() {
    return List.of("id");
  }

  @Override
  public String select(long rigId) {
    return "select %s from alert where rig_id = %d order by evidence_at, kind, id"
        .formatted(COLUMNS, rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    insert into alert (rig_id, %s)
    select %d, cast(id as uuid), kind, onset_from, onset_to, evidence_at, raised_at, standing,
      cast(document as jsonb)
    from %s
    """
        .formatted(COLUMNS, rigId, staged);
  }

  /** What cannot be read back would be in the way of every later judgement. */
  @Override
  public void prepare(String staged, JdbcClient jdbc) {
    for (String document :
        jdbc.sql("select document from " + staged + " order by line").query(String.class).list()) {
      try {
        json.readValue(document, Alert.class);
      } catch (JacksonException e) {
        throw InvalidInput.inBody("alert.csv: document", document, "an alert as JSON");
      }
    }
  }
}
