package org.limbspan.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.ConcurrentLruCache;
import tools.jackson.databind.json.JsonMapper;

/**
 * The nights of each rig's judgement in parts, of which only those are written that are not what
 * this instance wrote last.
 */
final class NightParts {

  /** As many nights as one part has; a year has some two of them. */
  private static final int NIGHTS = 256;

  private static final int REMEMBERED = 16;

  private static final String SAVE =
      """
      insert into judgement_nights (rig_id, number, document)
      values (:rigId, :number, cast(:document as json))
      on conflict (rig_id, number) do update set document = excluded.document
      """;

  private static final String CUT =
      """
      delete from judgement_nights where rig_id = :rigId and number >= :count
      """;

  private final JdbcClient jdbc;
  private final JsonMapper json;
  private final ConcurrentLruCache<Long, AtomicReference<@Nullable Written>> lastWritten =
      new ConcurrentLruCache<>(REMEMBERED, rigId -> new AtomicReference<>());

  NightParts(JdbcClient jdbc, JsonMapper json) {
    this.jdbc = jdbc;
    this.json = json;
  }

  /** What was written together with a judgement, unless its transaction was given up. */
  record Written(long revision, Instant judgedAt, List<List<NightsResult.Night>> parts) {}

  /** What this instance wrote last of a rig. */
  Optional<Written> lastWritten(long rigId) {
    return Optional.ofNullable(lastWritten.get(rigId).get());
  }

  /**
   * Writes what is not there yet.
   *
   * @param there the parts that the table is known to hold; none where that is not known
   */
  void save(
      long rigId,
      long revision,
      Instant judgedAt,
      List<NightsResult.Night> nights,
      List<List<NightsResult.Night>> there) {
    List<List<NightsResult.Night>> parts = parts(nights);
    for (int number = 0; number < parts.size(); number++) {
      if (number >= there.size() || !there.get(number).equals(parts.get(number))) {
        write(rigId, number, parts.get(number));
      }
    }
    if (there.isEmpty() || there.size() > parts.size()) {
      jdbc.sql(CUT).param("rigId", rigId).param("count", parts.size()).update();
    }
    lastWritten.get(rigId).set(new Written(revision, judgedAt, parts));
  }

  private void write(long rigId, int number, List<NightsResult.Night> part) {
    int rows =
        jdbc.sql(SAVE)
            .param("rigId", rigId)
            .param("number", number)
            .param("document", json.writeValueAsString(part))
            .update();
    if (rows != 1) {
      throw new IllegalStateException("nights of rig " + rigId + ": " + rows + " rows written");
    }
  }

  private static List<List<NightsResult.Night>> parts(List<NightsResult.Night> nights) {
    List<List<NightsResult.Night>> parts = new ArrayList<>();
    for (int from = 0; from < nights.size(); from += NIGHTS) {
      parts.add(nights.subList(from, Math.min(nights.size(), from + NIGHTS)));
    }
    return parts;
  }

  /**
   * The nights of all parts together.
   *
   * @param parts in their order, an array of arrays; null where there is none
   */
  List<NightsResult.Night> read(@Nullable String parts) {
    return parts == null
        ? List.of()
        : Arrays.stream(json.readValue(parts, NightsResult.Night[][].class))
            .flatMap(Arrays::stream)
            .toList();
  }
}
