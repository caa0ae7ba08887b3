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
import org.limbspan.platform.RigKeyRing;
import org.limbspan.platform.Sha256;
import org.limbspan.platform.Violation;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Keys of rigs: 256 random bits behind a word that tells what they are. Kept is their SHA-256; so
 * long a secret needs no slow hash.
 */
@Service
class RigKeys implements RigKeyRing {

  static final String PREFIX = "limbspan-rig-";

  private static final int BYTES = 32;

  private static final String INSERT =
      """
      insert into rig_key (rig_id, name, sha256, created_at)
      values (:rigId, :name, :sha256, :createdAt)
      """;

  private static final String LIST =
      """
      select id, name, created_at, revoked_at from rig_key where rig_id = :rigId order by id
      """;

  private static final String REVOKE =
      """
      update rig_key set revoked_at = :revokedAt
      where rig_id = :rigId and id = :id and revoked_at is null
      """;

  private static final String RIG =
      """
      select r.slug from rig_key k join rig r on r.id = k.rig_id
      where k.sha256 = :sha256 and k.revoked_at is null
      """;

  private final JdbcClient jdbc;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  RigKeys(JdbcClient jdbc, Clock clock) {
    this.jdbc = jdbc;
    this.clock = clock;
  }

  /** A new key; this is the only time that it is known. */
  @Transactional
  public String cut(Rig rig, String name) {
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    String key = PREFIX + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    try {
      jdbc.sql(INSERT)
          .param("rigId", rig.id())
          .param("name", name)
          .param("sha256", Sha256.of(key.getBytes(StandardCharsets.UTF_8)))
          .param("createdAt", now())
          .update();
    } catch (DuplicateKeyException e) {
      throw new Conflict(
          "The rig has a key of that name already.",
          new Violation("name", name, "a name that no other key of this rig has or had"));
    }
    return key;
  }

  @Transactional(readOnly = true)
  public List<RigKey> of(Rig rig) {
    return jdbc.sql(LIST).param("rigId", rig.id()).query(RigKeys::key).list();
  }

  /** From now on the key opens nothing. */
  @Transactional
  public void revoke(Rig rig, long id) {
    int rows =
        jdbc.sql(REVOKE)
            .param("rigId", rig.id())
            .param("id", id)
            .param("revokedAt", now())
            .update();
    if (rows == 0) {
      throw new NotFound("key in force", "id", id);
    }
  }

  @Override
  @Transactional(readOnly = true)
  public Optional<String> rigOf(String key) {
    if (!key.startsWith(PREFIX)) {
      return Optional.empty();
    }
    return jdbc.sql(RIG)
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
