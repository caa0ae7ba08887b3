package org.limbspan.rig;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.util.List;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.stereotype.Component;

/** The rig's own horizon, all versions. */
@Component
class HorizonLedgerPart implements LedgerPart {

  @Override
  public Order order() {
    return Order.HORIZON;
  }

  @Override
  public String name() {
    return "horizon_line";
  }

  @Override
  public String title() {
    return "The rig's own horizon: altitudes of its upper edge around the compass.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("version", LedgerType.INTEGER, "version, from 1; the greatest counts"),
        optional("azimuths_deg", LedgerType.NUMBERS, "from north through east, degrees"),
        optional("altitudes_deg", LedgerType.NUMBERS, "at each of these azimuths, degrees"),
        optional("reason", LedgerType.STRING, "why it was taken back; such a one has no points"),
        required("entered_at", LedgerType.DATETIME, "when it was entered"));
  }

  @Override
  public List<String> key() {
    return List.of("version");
  }

  @Override
  public int sinceLayout() {
    return 2;
  }

  @Override
  public String select(long rigId) {
    return """
    select version, nullif(array_to_string(azimuths_deg, ' '), '') as azimuths_deg,
      nullif(array_to_string(altitudes_deg, ' '), '') as altitudes_deg, reason, entered_at
    from horizon_line where rig_id = %d
    order by version
    """
        .formatted(rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    insert into horizon_line (rig_id, version, azimuths_deg, altitudes_deg, reason, entered_at)
    select %d, version,
      cast(string_to_array(coalesce(azimuths_deg, ''), ' ') as double precision[]),
      cast(string_to_array(coalesce(altitudes_deg, ''), ' ') as double precision[]),
      reason, entered_at
    from %s order by line
    """
        .formatted(rigId, staged);
  }
}
