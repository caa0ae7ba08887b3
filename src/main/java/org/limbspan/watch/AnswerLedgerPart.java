package org.limbspan.watch;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.util.List;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.stereotype.Component;

/** What the owner said of alerts. */
@Component
class AnswerLedgerPart implements LedgerPart {

  private static final String FACTS = "cause, note, changed_at, consequence, answered_at";

  @Override
  public Order order() {
    return Order.ANSWERS;
  }

  @Override
  public String name() {
    return "answer";
  }

  @Override
  public String title() {
    return "What the owner said of alerts, in the order in which it was said.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("alert_id", LedgerType.STRING, "identity of the alert"),
        required("cause", LedgerType.STRING, "cause"),
        optional("note", LedgerType.STRING, "note"),
        optional(
            "changed_at", LedgerType.DATETIME, "when the change came about, as the owner knows"),
        optional("consequence", LedgerType.STRING, "what was done in the ledger with it"),
        required("answered_at", LedgerType.DATETIME, "when it was said"));
  }

  @Override
  public List<String> key() {
    return List.of("alert_id", "answered_at");
  }

  @Override
  public String select(long rigId) {
    return "select alert_id, %s from alert_answer where rig_id = %d order by id"
        .formatted(FACTS, rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    insert into alert_answer (rig_id, alert_id, %1$s)
    select %2$d, cast(alert_id as uuid), %1$s from %3$s order by line
    """
        .formatted(FACTS, rigId, staged);
  }
}
