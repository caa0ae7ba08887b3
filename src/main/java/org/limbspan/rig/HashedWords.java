package org.limbspan.rig;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.NotFound;
import org.limbspan.platform.Sha256;
import org.limbspan.platform.Violation;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/**
 * Words that open something of a rig: 256 random bits behind a prefix that tells what they are.
 * Kept is their SHA-256; so long a secret needs no slow hash.
 */
abstract class HashedWords {

  private static final int BYTES = 32;

  private static final String INSERT =
      """
      insert into %s (rig_id, name, sha256, created_at)
      values (:rigId, :name, :sha256, :createdAt)
      """;

  private static final String LIST =
      """
      select id, name, created_at, revoked_at from %s where rig_id = :rigId order by id
      """;

  private static final String REVOKE =
      """
      update %s set revoked_at = :revokedAt
      where rig_id = :rigId and id = :id and revoked_at is null
      """;

  private static final String RIG =
      """
      select r.slug from %s k join rig r on r.id = k.rig_id
      where k.sha256 = :sha256 and k.revoked_at is null
      """;

  private final JdbcClient jdbc;
  private final Clock clock;
  private final String table;
  private final String prefix;
  private final String thing;
  private final SecureRandom random = new SecureRandom();

  /**
   * @param table where they are kept
   * @param prefix of each
   * @param thing what one is called
   */
  HashedWords(JdbcClient jdbc, Clock clock, String table, String prefix, String thing) {
    this.jdbc = jdbc;
    this.clock = clock;
    this.table = table;
    this.prefix = prefix;
    this.thing = thing;
  }

  /** A new one; this is the only time that it is known. */
  @Transactional
  public String cut(Rig rig, String name) {
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    String key = prefix + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    try {
      jdbc.sql(INSERT.formatted(table))
          .param("rigId", rig.id())
          .param("name", name)
          .param("sha256", Sha256.of(key.getBytes(StandardCharsets.UTF_8)))
          .param("createdAt", now())
          .update();
    } catch (DuplicateKeyException e) {
      throw new Conflict(
          "The rig has a " + thing + " of that name already.",
          new Violation("name", name, "a name that no other " + thing + " of this rig has or had"));
    }
    return key;
  }

  @Transactional(readOnly = true)
  public List<RigKey> of(Rig rig) {
    return jdbc.sql(LIST.formatted(table)).param("rigId", rig.id()).query(HashedWords::key).list();
  }

  /** From now on it opens nothing. */
  @Transactional
  public void revoke(Rig rig, long id) {
    int rows =
        jdbc.sql(REVOKE.formatted(table))
            .param("rigId", rig.id())
            .param("id", id)
            .param("revokedAt", now())
            .update();
    if (rows == 0) {
      throw new NotFound(thing + " in force", "id", id);
    }
  }

  @Transactional(readOnly = true)
  public Optional<String> rigOf(String key) {
    if (!key.startsWith(prefix)) {
      return Optional.empty();
    }
    return jdbc.sql(RIG.formatted(table))
        .param("sha256", Sha256.of(key.getBytes(StandardCharsets.UTF_8)))
        .query(String.class)
        .optional();
  }

  private OffsetDateTime now() {
    return OffsetDateTime.ofInstant(clock.instant().truncatedTo(ChronoUnit.MICROS), ZoneOffset.UTC);
  }

  private static RigKey key(ResultSet row, int number) throws SQLException {
    OffsetDateTime revoked = row.getObject("revoked_at", OffsetDateTime.class);
    return new RigKey(
        row.getLong("id"),
        row.getString("name"),
        row.getObject("created_at", OffsetDateTime.class).toInstant(),
        revoked == null ? null : revoked.toInstant());
  }
}
