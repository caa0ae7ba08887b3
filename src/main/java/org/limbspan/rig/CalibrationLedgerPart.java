package org.limbspan.rig;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.util.List;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.stereotype.Component;

/** Calibrations, all versions, with what was taken back. */
@Component
class CalibrationLedgerPart implements LedgerPart {

  private static final String FACTS =
      """
      taken_at, method, separation_arcmin, version, target_length_mm, target_length_uncertainty_mm,
      target_distance_m, target_distance_uncertainty_m, separation_uncertainty_arcmin, measured,
      measured_uncertainty, unit, note, entered_at
      """;

  @Override
  public Order order() {
    return Order.CALIBRATIONS;
  }

  @Override
  public String name() {
    return "calibration";
  }

  @Override
  public String title() {
    return "Photographs of a target of known size and distance, or of two stars.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("taken_at", LedgerType.DATETIME, "when the photograph was taken"),
        required("method", LedgerType.STRING, "target or star-pair"),
        optional("separation_arcmin", LedgerType.NUMBER, "separation of the stars, arcminutes"),
        required(
            "version", LedgerType.INTEGER, "version of this entry, from 1; the greatest counts"),
        optional("target_length_mm", LedgerType.NUMBER, "length of the target, millimetres"),
        optional("target_length_uncertainty_mm", LedgerType.NUMBER, "its standard uncertainty"),
        optional("target_distance_m", LedgerType.NUMBER, "distance of the target, metres"),
        optional("target_distance_uncertainty_m", LedgerType.NUMBER, "its standard uncertainty"),
        optional("separation_uncertainty_arcmin", LedgerType.NUMBER, "standard uncertainty"),
        required("measured", LedgerType.NUMBER, "length in the photograph, in the unit"),
        required("measured_uncertainty", LedgerType.NUMBER, "its standard uncertainty"),
        required("unit", LedgerType.STRING, "px (pixels) or mm (millimetres on a screen)"),
        optional("note", LedgerType.STRING, "note"),
        required("entered_at", LedgerType.DATETIME, "when it was entered"),
        optional("withdrawn_at", LedgerType.DATETIME, "when this version was taken back"),
        optional("withdrawal_reason", LedgerType.STRING, "why"));
  }

  @Override
  public List<String> key() {
    return List.of("taken_at", "method", "separation_arcmin", "version");
  }

  @Override
  public String select(long rigId) {
    return """
    select %s, w.withdrawn_at, w.reason as withdrawal_reason
    from calibration c left join calibration_withdrawal w on w.calibration_id = c.id
    where c.rig_id = %d
    order by c.taken_at, c.method, c.separation_arcmin nulls first, c.version
    """
        .formatted(FACTS.strip(), rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    with entered as (
      insert into calibration (rig_id, %1$s)
      select %2$d, %1$s from %3$s order by line
      returning id, taken_at, method, separation_arcmin, version
    )
    insert into calibration_withdrawal (calibration_id, reason, withdrawn_at)
    select e.id, f.withdrawal_reason, f.withdrawn_at
    from %3$s f
    join entered e on e.taken_at = f.taken_at and e.method = f.method
      and e.separation_arcmin is not distinct from f.separation_arcmin and e.version = f.version
    where f.withdrawn_at is not null
    """
        .formatted(FACTS.strip(), rigId, staged);
  }
}
