package org.limbspan.photo;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.util.Arrays;
import java.util.List;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.limbspan.sky.Axis;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.SqlArrayValue;
import org.springframework.stereotype.Component;

/** Which photographs made which reading. */
@Component
class PhotoReadingLedgerPart implements LedgerPart {

  private static final String FACTS = "taken_at, axis, diameter_px, uncertainty_px";

  /** Photographs by their natural keys, in the order of the array. */
  private static final String NAMED =
      """
      (select string_agg(p.sha256 || ':' || p.version, ' ' order by u.n)
        from unnest(b.%1$s_ids) with ordinality u (id, n) join photo p on p.id = u.id) as %1$ss""";

  /** The other way; a photograph that is not there is told by the cast that fails. */
  private static final String FOUND =
      """
      array(select coalesce(p.id, cast('no photograph ' || u.name as bigint))
        from unnest(string_to_array(f.%1$ss, ' ')) with ordinality u (name, n)
        left join photo p on p.rig_id = %2$d and p.sha256 || ':' || p.version = u.name
          and p.sha256 = split_part(u.name, ':', 1)
        order by u.n)""";

  @Override
  public Order order() {
    return Order.PHOTO_READINGS;
  }

  @Override
  public int sinceLayout() {
    return PhotoLedgerPart.LAYOUT;
  }

  @Override
  public String name() {
    return "photo_reading";
  }

  @Override
  public String title() {
    return "Which photographs made which reading, in the order in which it was worked out.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("taken_at", LedgerType.DATETIME, "instant of the reading"),
        required("axis", LedgerType.STRING, "its axis"),
        required("diameter_px", LedgerType.NUMBER, "its diameter, pixels"),
        required("uncertainty_px", LedgerType.NUMBER, "its standard uncertainty, pixels"),
        required(
            "photos",
            LedgerType.STRING,
            "hash:version of the photographs used, with blanks between them"),
        optional("set_asides", LedgerType.STRING, "the same of those set aside"),
        required("remarks", LedgerType.STRING, "what was to be said of it, a list as JSON"),
        optional("reading_version", LedgerType.INTEGER, "version of the reading that was entered"),
        optional("retired_at", LedgerType.DATETIME, "when another one took its place"),
        required("planned_at", LedgerType.DATETIME, "when it was worked out"));
  }

  @Override
  public List<String> key() {
    return List.of("taken_at", "axis", "planned_at");
  }

  @Override
  public String select(long rigId) {
    return """
    select b.taken_at, b.axis, diameter_px, uncertainty_px, %s, %s,
      cast(to_jsonb(remarks) as text) as remarks, r.version as reading_version, retired_at, planned_at
    from photo_reading b left join reading r on r.rig_id = b.rig_id and r.id = b.reading_id
    where b.rig_id = %d
    order by b.id
    """
        .formatted(NAMED.formatted("photo"), NAMED.formatted("set_aside"), rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    insert into photo_reading (rig_id, %1$s, photo_ids, set_aside_ids, remarks, reading_id,
      retired_at, planned_at)
    select %2$d, f.taken_at, f.axis, diameter_px, uncertainty_px, %3$s, %4$s,
      array(select coalesce(e.words, '') from jsonb_array_elements_text(cast(f.remarks as jsonb)) e (words)),
      case when f.reading_version is not null then
        coalesce(r.id, cast('no reading of version ' || f.reading_version as bigint)) end,
      retired_at, planned_at
    from %5$s f
    left join reading r on r.rig_id = %2$d and r.taken_at = f.taken_at and r.axis = f.axis
      and r.version = f.reading_version
    order by f.line
    """
        .formatted(
            FACTS,
            rigId,
            FOUND.formatted("photo", rigId),
            FOUND.formatted("set_aside", rigId),
            staged);
  }

  /** The table leaves the axis open; the ledger's pages do not. */
  @Override
  public void prepare(String staged, JdbcClient jdbc) {
    jdbc.sql("select axis from " + staged + " where axis <> all (:axes) limit 1")
        .param(
            "axes",
            new SqlArrayValue("text", Arrays.stream(Axis.values()).map(Axis::label).toArray()))
        .query(String.class)
        .optional()
        .ifPresent(
            axis -> {
              throw InvalidInput.inBody(
                  "photo_reading.csv: axis", axis, "horizontal, vertical or limb-fit");
            });
  }
}
