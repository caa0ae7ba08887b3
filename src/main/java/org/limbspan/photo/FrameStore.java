package org.limbspan.photo;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.bracket.Frame;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.sky.Axis;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The photographs of a rig as frames: what stands, by its newest measurement. */
@Repository
class FrameStore {

  private static final String FRAMES =
      """
      select p.id, p.file_name, p.taken_at, p.axis, p.exposure_s, p.iso, p.f_number, m.*
      from photo p
      join lateral (
        select outcome, horizontal_px, horizontal_own_px, horizontal_shared_px,
          vertical_px, vertical_own_px, vertical_shared_px
        from photo_measurement where photo_id = p.id
        order by method desc limit 1) m on m.outcome = 'measured'
      where p.rig_id = :rigId
        and not exists (select from photo_withdrawal w where w.photo_id = p.id)
      """;

  private final JdbcClient jdbc;

  FrameStore(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  List<Frame> frames(long rigId, InstrumentHistory history) {
    return jdbc.sql(FRAMES)
        .param("rigId", rigId)
        .query((row, number) -> frame(row, history))
        .list();
  }

  private static Frame frame(ResultSet row, InstrumentHistory history) throws SQLException {
    var takenAt = PhotoStore.instant(row, "taken_at");
    Axis axis = Axis.ofLabel(row.getString("axis"));
    DiscFigures.Along along =
        DiscFigures.along(axis, diameter(row, "horizontal"), diameter(row, "vertical"));
    return new Frame(
        row.getLong("id"),
        row.getString("file_name"),
        takenAt,
        history.setupAt(takenAt).number(),
        axis,
        along.diameterPx(),
        along.ownPx(),
        along.sharedPx(),
        stops(row));
  }

  private static DiscFigures.Along diameter(ResultSet row, String axis) throws SQLException {
    return new DiscFigures.Along(
        row.getDouble(axis + "_px"),
        row.getDouble(axis + "_own_px"),
        row.getDouble(axis + "_shared_px"));
  }

  /** An unknown aperture is taken for the same in all photographs. */
  private static @Nullable Double stops(ResultSet row) throws SQLException {
    Double exposureS = row.getObject("exposure_s", Double.class);
    Integer iso = row.getObject("iso", Integer.class);
    Double fNumber = row.getObject("f_number", Double.class);
    if (exposureS == null) {
      return null;
    }
    double light =
        exposureS * (iso == null ? 100 : iso) / (fNumber == null ? 1 : fNumber * fNumber);
    return Math.log(light) / Math.log(2);
  }
}
