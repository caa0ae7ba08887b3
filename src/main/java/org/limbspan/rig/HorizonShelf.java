package org.limbspan.rig;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.NotFound;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.HorizonLine.Point;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Keeps the horizons of rigs, all versions; one without points takes back what stood. */
@Repository
class HorizonShelf {

  private static final String LATEST =
      """
      select version, azimuths_deg, altitudes_deg, entered_at from horizon_line
      where rig_id = :rigId
      order by version desc
      limit 1
      """;

  private static final String INSERT =
      """
      insert into horizon_line (rig_id, version, azimuths_deg, altitudes_deg, reason, entered_at)
      values (:rigId, :version, :azimuthsDeg, :altitudesDeg, :reason, :enteredAt)
      """;

  private final JdbcClient jdbc;
  private final LedgerRevision revision;
  private final ApplicationEventPublisher events;
  private final Clock clock;

  HorizonShelf(
      JdbcClient jdbc, LedgerRevision revision, ApplicationEventPublisher events, Clock clock) {
    this.jdbc = jdbc;
    this.revision = revision;
    this.events = events;
    this.clock = clock;
  }

  Optional<RecordedHorizon> standing(long rigId) {
    return latest(rigId).flatMap(Version::recorded);
  }

  Entered<RecordedHorizon> enter(Rig rig, HorizonLine line) {
    revision.lock(rig.id());
    Optional<RecordedHorizon> held = standing(rig.id());
    if (held.isPresent() && held.get().line().equals(line)) {
      return new Entered<>(held.get(), Entered.Outcome.ALREADY_HELD);
    }
    store(rig, line.points(), null);
    return new Entered<>(standing(rig.id()).orElseThrow(), Entered.Outcome.STORED);
  }

  void withdraw(Rig rig, String reason) {
    revision.lock(rig.id());
    if (standing(rig.id()).isEmpty()) {
      throw new NotFound("horizon", "rig", rig.slug());
    }
    store(rig, List.of(), reason);
  }

  private void store(Rig rig, List<Point> points, @Nullable String reason) {
    Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    jdbc.sql(INSERT)
        .param("rigId", rig.id())
        .param("version", latest(rig.id()).map(Version::number).orElse(0) + 1)
        .param("azimuthsDeg", column(points, Point::azimuthDeg))
        .param("altitudesDeg", column(points, Point::altitudeDeg))
        .param("reason", reason)
        .param("enteredAt", OffsetDateTime.ofInstant(now, ZoneOffset.UTC))
        .update();
    revision.advance(rig.id());
    events.publishEvent(new HorizonEntered(rig.id(), rig.slug()));
  }

  private static Double[] column(List<Point> points, ToDoubleFunction<Point> value) {
    return points.stream().mapToDouble(value).boxed().toArray(Double[]::new);
  }

  private Optional<Version> latest(long rigId) {
    return jdbc.sql(LATEST).param("rigId", rigId).query(HorizonShelf::version).optional();
  }

  private record Version(int number, List<Point> points, Instant enteredAt) {

    Optional<RecordedHorizon> recorded() {
      return points.isEmpty()
          ? Optional.empty()
          : Optional.of(new RecordedHorizon(new HorizonLine(points), number, enteredAt));
    }
  }

  private static Version version(ResultSet row, int number) throws SQLException {
    Double[] azimuths = (Double[]) row.getArray("azimuths_deg").getArray();
    Double[] altitudes = (Double[]) row.getArray("altitudes_deg").getArray();
    return new Version(
        row.getInt("version"),
        IntStream.range(0, azimuths.length)
            .mapToObj(i -> new Point(azimuths[i], altitudes[i]))
            .toList(),
        row.getObject("entered_at", OffsetDateTime.class).toInstant());
  }
}
