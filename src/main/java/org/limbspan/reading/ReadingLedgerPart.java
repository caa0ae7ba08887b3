package org.limbspan.reading;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Readings, all versions, withdrawals among them. */
@Component
class ReadingLedgerPart implements LedgerPart {

  private static final String BEFORE_FRAMES =
      "taken_at, axis, version, standing, diameter, uncertainty, unit";
  private static final String AFTER_FRAMES =
      "sighted_altitude_deg, sighted_azimuth_deg, exposure_s, iso, f_number, sky, note, reason,"
          + " entered_at";

  private static final String YEARS =
      """
      select distinct cast(extract(year from taken_at at time zone 'UTC') as int) from %s order by 1
      """;

  private final ReadingPartitions partitions;

  ReadingLedgerPart(ReadingPartitions partitions) {
    this.partitions = partitions;
  }

  @Override
  public Order order() {
    return Order.READINGS;
  }

  @Override
  public String name() {
    return "reading";
  }

  @Override
  public String title() {
    return "Diameters of the Moon as entered. Versions of one instant and axis are one reading; the"
        + " greatest counts, unless it is withdrawn.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("taken_at", LedgerType.DATETIME, "when the photograph was taken"),
        required("axis", LedgerType.STRING, "horizontal, vertical or limb-fit"),
        required("version", LedgerType.INTEGER, "version of this entry, from 1"),
        required("standing", LedgerType.STRING, "held or withdrawn"),
        required("diameter", LedgerType.NUMBER, "diameter, in the unit"),
        required("uncertainty", LedgerType.NUMBER, "its standard uncertainty"),
        required("unit", LedgerType.STRING, "px (pixels), mm (on a screen) or arcmin (arcminutes)"),
        optional("frames", LedgerType.NUMBERS, "diameters of the frames, with blanks between them"),
        optional("sighted_altitude_deg", LedgerType.NUMBER, "altitude as sighted, degrees"),
        optional(
            "sighted_azimuth_deg", LedgerType.NUMBER, "azimuth as sighted, from north, degrees"),
        optional("exposure_s", LedgerType.NUMBER, "exposure, seconds"),
        optional("iso", LedgerType.INTEGER, "ISO speed"),
        optional("f_number", LedgerType.NUMBER, "f-number"),
        optional("sky", LedgerType.STRING, "the sky in words"),
        optional("note", LedgerType.STRING, "note"),
        optional("reason", LedgerType.STRING, "why it was withdrawn"),
        required("entered_at", LedgerType.DATETIME, "when it was entered"));
  }

  @Override
  public List<String> key() {
    return List.of("taken_at", "axis", "version");
  }

  @Override
  public String select(long rigId) {
    return """
    select %s, array_to_string(frames, ' ') as frames, %s
    from reading where rig_id = %d
    order by taken_at, axis, version
    """
        .formatted(BEFORE_FRAMES, AFTER_FRAMES, rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    insert into reading (rig_id, %1$s, frames, %2$s)
    select %3$d, %1$s, cast(string_to_array(frames, ' ') as double precision[]), %2$s
    from %4$s order by line
    """
        .formatted(BEFORE_FRAMES, AFTER_FRAMES, rigId, staged);
  }

  @Override
  public void prepare(String staged, JdbcClient jdbc) {
    List<Integer> years = jdbc.sql(YEARS.formatted(staged)).query(Integer.class).list();
    for (int year : years) {
      if (year < 1900 || year > 2100) {
        throw InvalidInput.inBody("reading.csv: taken_at", year, "a year from 1900 to 2100");
      }
    }
    partitions.makeFor(
        years.stream()
            .map(year -> LocalDate.of(year, 7, 1).atStartOfDay().toInstant(ZoneOffset.UTC))
            .toList());
  }
}
