package org.limbspan.rig;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.limbspan.platform.Violation;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rig itself: one row. */
@Component
class RigLedgerPart implements LedgerPart {

  @Override
  public Order order() {
    return Order.RIG;
  }

  @Override
  public String name() {
    return "rig";
  }

  @Override
  public String title() {
    return "The rig: one camera, lens and mount at one site.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("slug", LedgerType.STRING, "short name in addresses"),
        required("name", LedgerType.STRING, "name"),
        required("latitude_deg", LedgerType.NUMBER, "geodetic latitude, north positive, degrees"),
        required("longitude_deg", LedgerType.NUMBER, "longitude, east positive, degrees"),
        required("elevation_m", LedgerType.NUMBER, "elevation, metres"),
        required("time_zone", LedgerType.STRING, "IANA name of the time zone"),
        optional("note", LedgerType.STRING, "note"),
        required("created_at", LedgerType.DATETIME, "when it was entered"));
  }

  @Override
  public List<String> key() {
    return List.of("slug");
  }

  @Override
  public String select(long rigId) {
    return """
    select slug, name, latitude_deg, longitude_deg, elevation_m, time_zone, note, created_at
    from rig where id = %d
    """
        .formatted(rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    insert into rig (slug, name, latitude_deg, longitude_deg, elevation_m, time_zone, note, created_at)
    select slug, name, latitude_deg, longitude_deg, elevation_m, time_zone, note, created_at
    from %s
    """
        .formatted(staged);
  }

  @Override
  public void prepare(String staged, JdbcClient jdbc) {
    List<Map<String, Object>> rows =
        jdbc.sql("select slug, time_zone from " + staged).query().listOfRows();
    if (rows.size() != 1) {
      throw InvalidInput.inBody("rig.csv", rows.size() + " rows", "one row");
    }
    String slug = String.valueOf(rows.get(0).get("slug"));
    refuseUnknown(String.valueOf(rows.get(0).get("time_zone")));
    boolean held =
        jdbc.sql("select exists (select from rig where slug = :slug)")
            .param("slug", slug)
            .query(Boolean.class)
            .single();
    if (held) {
      throw new Conflict(
          "There is a rig '" + slug + "' already; its ledger was left as it is.",
          new Violation("slug", slug, "a slug that no rig of this installation has"));
    }
  }

  private static void refuseUnknown(String timeZone) {
    try {
      ZoneId.of(timeZone);
    } catch (DateTimeException unknown) {
      throw InvalidInput.inBody(
          "time_zone", timeZone, "the IANA name of a time zone, such as Europe/Madrid");
    }
  }
}
