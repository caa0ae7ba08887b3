package org.limbspan.photo;

import static org.limbspan.platform.LedgerColumn.optional;
import static org.limbspan.platform.LedgerColumn.required;

import java.util.List;
import java.util.stream.Stream;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Photographs, all versions, with what was taken back. */
@Component
class PhotoLedgerPart implements LedgerPart {

  static final int LAYOUT = 2;

  private static final int ROWS_AT_ONCE = 100;

  private static final String FACTS =
      """
      sha256, version, file_name, format, byte_count, width_px, height_px, taken_at, clock, axis,
      focal_length_mm, exposure_s, iso, f_number, camera, entered_at
      """;

  @Override
  public Order order() {
    return Order.PHOTOS;
  }

  @Override
  public int sinceLayout() {
    return LAYOUT;
  }

  @Override
  public String name() {
    return "photo";
  }

  @Override
  public String title() {
    return "Photographs in the order in which they were entered. The file itself, where it is sent"
        + " along, is named by its hash.";
  }

  @Override
  public List<LedgerColumn> columns() {
    return List.of(
        required("sha256", LedgerType.STRING, "SHA-256 of the file, hexadecimal"),
        required("version", LedgerType.INTEGER, "version of this entry, from 1"),
        required("file_name", LedgerType.STRING, "name that the sender gave it"),
        required("format", LedgerType.STRING, "jpeg, png or tiff"),
        required("byte_count", LedgerType.INTEGER, "length of the file, bytes"),
        required("width_px", LedgerType.INTEGER, "width of the upright picture, pixels"),
        required("height_px", LedgerType.INTEGER, "its height, pixels"),
        required("taken_at", LedgerType.DATETIME, "when it was taken"),
        required(
            "clock",
            LedgerType.STRING,
            "who told the instant: sender, the camera's clock with its offset (offset), the"
                + " camera's clock in the rig's time zone (time-zone)"),
        required("axis", LedgerType.STRING, "horizontal, vertical or limb-fit"),
        optional("focal_length_mm", LedgerType.NUMBER, "focal length, millimetres"),
        optional("exposure_s", LedgerType.NUMBER, "exposure, seconds"),
        optional("iso", LedgerType.INTEGER, "ISO speed"),
        optional("f_number", LedgerType.NUMBER, "f-number"),
        optional("camera", LedgerType.STRING, "camera, as its file says"),
        required("entered_at", LedgerType.DATETIME, "when it was entered"),
        optional("withdrawn_at", LedgerType.DATETIME, "when this version was taken back"),
        optional("withdrawal_reason", LedgerType.STRING, "why"));
  }

  @Override
  public List<String> key() {
    return List.of("sha256", "version");
  }

  @Override
  public String select(long rigId) {
    return """
    select %s, w.withdrawn_at, w.reason as withdrawal_reason
    from photo p left join photo_withdrawal w on w.photo_id = p.id
    where p.rig_id = %d
    order by p.id
    """
        .formatted(FACTS.strip(), rigId);
  }

  @Override
  public String insert(String staged, long rigId) {
    return """
    with entered as (
      insert into photo (rig_id, %1$s)
      select %2$d, %1$s from %3$s order by line
      returning id, sha256, version
    )
    insert into photo_withdrawal (photo_id, reason, withdrawn_at)
    select e.id, f.withdrawal_reason, f.withdrawn_at
    from %3$s f join entered e on e.sha256 = f.sha256 and e.version = f.version
    where f.withdrawn_at is not null
    """
        .formatted(FACTS.strip(), rigId, staged);
  }

  /** A name is shown and goes into headers: it comes in only as it would from a sender. */
  @Override
  public void prepare(String staged, JdbcClient jdbc) {
    try (Stream<String> names =
        jdbc
            .sql("select file_name from " + staged + " order by line")
            .withFetchSize(ROWS_AT_ONCE)
            .query(String.class)
            .stream()) {
      names
          .filter(name -> !IncomingPhoto.plain(name).equals(name))
          .findFirst()
          .ifPresent(
              name -> {
                throw InvalidInput.inBody(
                    "photo.csv: file_name",
                    name,
                    "a name of 1 to 200 characters without folders and control characters");
              });
    }
  }
}
