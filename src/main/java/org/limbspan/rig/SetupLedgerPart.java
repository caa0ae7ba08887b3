package org.limbspan.rig;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.util.List;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.stereotype.Component;

/** Setups, all versions, with what was taken back. */
@Component
class SetupLedgerPart implements LedgerPart {

  @Override
  public Order order() {
    return Order.SETUPS;
  }

  @Override
  public String name() {
    return "setup";
  }

  @Override
  public String title() {
    return "From its start on, camera, zoom or mount is another; the first has no start.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        optional("started_at", LedgerType.DATETIME, "start; none for the first setup"),
        required(
            "version", LedgerType.INTEGER, "version of this entry, from 1; the greatest counts"),
        optional("note", LedgerType.STRING, "note"),
        required("entered_at", LedgerType.DATETIME, "when it was entered"),
        optional("withdrawn_at", LedgerType.DATETIME, "when this version was taken back"),
        optional("withdrawal_reason", LedgerType.STRING, "why"));
  }

  @Override
  public List<String> key() {
    return List.of("started_at", "version");
  }

  @Override
  public String select(long rigId) {
    return """
    select s.started_at, s.version, s.note, s.entered_at, w.withdrawn_at, w.reason as withdrawal_reason
    from setup s left join setup_withdrawal w on w.setup_id = s.id
    where s.rig_id = %d
    order by s.started_at nulls first, s.version
    """
        .formatted(rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    with entered as (
      insert into setup (rig_id, started_at, version, note, entered_at)
      select %1$d, started_at, version, note, entered_at from %2$s order by line
      returning id, started_at, version
    )
    insert into setup_withdrawal (setup_id, reason, withdrawn_at)
    select e.id, f.withdrawal_reason, f.withdrawn_at
    from %2$s f
    join entered e on e.started_at is not distinct from f.started_at and e.version = f.version
    where f.withdrawn_at is not null
    """
        .formatted(rigId, staged);
  }
}
