package org.limbspan.watch;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.util.ConcurrentLruCache;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.json.JsonMapper;

/** Keeps the newest judgement of each rig: its nights in parts, all else in one document. */
@Repository
class JudgementRepository {

  private static final String LOCK =
      """
      select pg_advisory_xact_lock(hashtextextended('limbspan.judgement', :rigId))
      """;

  private static final String SAVE =
      """
      insert into judgement (rig_id, revision, method, judged_at, document)
      values (:rigId, :revision, :method, :judgedAt, cast(:document as json))
      on conflict (rig_id) do update
        set revision = excluded.revision,
            method = excluded.method,
            judged_at = excluded.judged_at,
            document = excluded.document
      """;

  private static final String FIND =
      """
      select revision, method, judged_at, document,
        (select '[' || string_agg(n.document::text, ',' order by n.number) || ']'
         from judgement_nights n where n.rig_id = j.rig_id) as nights
      from judgement j where rig_id = :rigId
      """;

  private static final String FIND_IN_BRIEF =
      """
      select revision, method, judged_at, document, null as nights
      from judgement where rig_id = :rigId
      """;

  private static final String REFLECTED =
      """
      select rig_id, revision from judgement where method = :method
      """;

  private static final String REFLECTS =
      """
      select exists (
        select from judgement
        where rig_id = :rigId and method = :method and revision >= :revision
      )
      """;

  private static final String IS_STILL =
      """
      select exists (
        select from judgement
        where rig_id = :rigId and method = :method and revision = :revision
          and judged_at = :judgedAt
      )
      """;

  /** Documents of ten years of nights are a megabyte each. */
  private static final int REMEMBERED = 16;

  private final JdbcClient jdbc;
  private final JsonMapper json;
  private final NightParts nights;
  private final ConcurrentLruCache<Long, AtomicReference<@Nullable Kept>> lastRead =
      new ConcurrentLruCache<>(REMEMBERED, rigId -> new AtomicReference<>());

  JudgementRepository(JdbcClient jdbc, JsonMapper json) {
    this.jdbc = jdbc;
    this.json = json.rebuild().enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER).build();
    this.nights = new NightParts(jdbc, this.json);
  }

  /** Until the end of the transaction nobody else writes a judgement of this rig. */
  void lock(long rigId) {
    jdbc.sql(LOCK).param("rigId", rigId).query((row, number) -> true).single();
  }

  /** Within a transaction that holds the rig's {@link #lock}. */
  void save(long rigId, long revision, Instant judgedAt, JudgementDocument document) {
    List<List<NightsResult.Night>> there =
        nights
            .lastWritten(rigId)
            .filter(it -> isStill(rigId, it.revision(), JudgementDocument.METHOD, it.judgedAt()))
            .map(NightParts.Written::parts)
            .orElse(List.of());
    nights.save(rigId, revision, judgedAt, document.nights().nights(), there);
    int rows =
        jdbc.sql(SAVE)
            .param("rigId", rigId)
            .param("revision", revision)
            .param("method", JudgementDocument.METHOD)
            .param("judgedAt", OffsetDateTime.ofInstant(judgedAt, ZoneOffset.UTC))
            .param("document", json.writeValueAsString(document.withNights(List.of())))
            .update();
    if (rows != 1) {
      throw new IllegalStateException("judgement of rig " + rigId + ": " + rows + " rows written");
    }
  }

  /** Whether a rig's judgement is of this method and not behind a revision of its ledger. */
  boolean reflects(long rigId, long revision) {
    return jdbc.sql(REFLECTS)
        .param("rigId", rigId)
        .param("method", JudgementDocument.METHOD)
        .param("revision", revision)
        .query(Boolean.class)
        .single();
  }

  /** The revisions of their ledgers that all judgements of this method reflect, by rig. */
  Map<Long, Long> reflected() {
    Map<Long, Long> revisions = new HashMap<>();
    jdbc.sql(REFLECTED)
        .param("method", JudgementDocument.METHOD)
        .query(
            row -> {
              revisions.put(row.getLong("rig_id"), row.getLong("revision"));
            });
    return revisions;
  }

  /**
   * A page asks for it many times over: a document that is still in the table is not read again.
   */
  Optional<Kept> find(long rigId) {
    AtomicReference<@Nullable Kept> remembered = lastRead.get(rigId);
    return stillThere(rigId, remembered.get())
        .or(
            () -> {
              Optional<Kept> read = read(FIND, rigId);
              read.ifPresent(remembered::set);
              return read;
            });
  }

  /** The same, perhaps without its nights, which are most of it. */
  Optional<Kept> findInBrief(long rigId) {
    return stillThere(rigId, lastRead.get(rigId).get()).or(() -> read(FIND_IN_BRIEF, rigId));
  }

  private Optional<Kept> stillThere(long rigId, @Nullable Kept last) {
    return Optional.ofNullable(last)
        .filter(it -> isStill(rigId, it.revision(), it.method(), it.judgedAt()));
  }

  private Optional<Kept> read(String sql, long rigId) {
    return jdbc.sql(sql).param("rigId", rigId).query(this::kept).optional();
  }

  private boolean isStill(long rigId, long revision, int method, Instant judgedAt) {
    return jdbc.sql(IS_STILL)
        .param("rigId", rigId)
        .param("method", method)
        .param("revision", revision)
        .param("judgedAt", OffsetDateTime.ofInstant(judgedAt, ZoneOffset.UTC))
        .query(Boolean.class)
        .single();
  }

  private Kept kept(ResultSet row, int number) throws SQLException {
    int method = row.getInt("method");
    JudgementDocument document = json.readValue(row.getString("document"), JudgementDocument.class);
    return new Kept(
        row.getLong("revision"),
        method,
        row.getObject("judged_at", OffsetDateTime.class).toInstant(),
        method < JudgementDocument.FIRST_IN_PARTS
            ? document
            : document.withNights(nights.read(row.getString("nights"))));
  }

  /** A judgement as it lies in the table. */
  record Kept(long revision, int method, Instant judgedAt, JudgementDocument document) {

    boolean reflects(long ledgerRevision) {
      return method == JudgementDocument.METHOD && revision >= ledgerRevision;
    }
  }
}
