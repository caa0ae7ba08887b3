package org.limbspan.platform.reads;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.reads.StandbyStand.Use;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The standby, and how far it has followed. A thread asks the primary how far its log is written,
 * then the standby whether it has replayed that much: once it has, everything that was committed
 * before the first question is on the standby, whichever instance committed it. So no clocks of two
 * computers are compared, and a primary at rest does not make the standby look old.
 *
 * <p>Source: PostgreSQL 18 documentation, tables "Backup Control Functions" ({@code
 * pg_current_wal_lsn}), "Recovery Information Functions" ({@code pg_is_in_recovery}, {@code
 * pg_last_wal_replay_lsn}) and "Control Data Functions" ({@code pg_control_system}).
 */
final class Standby implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Standby.class);

  private static final String WRITTEN =
      """
      select pg_current_wal_lsn()::text as lsn, system_identifier::text as cluster,
             current_database() as name
      from pg_control_system()
      """;

  private static final String FOLLOWED =
      """
      select pg_is_in_recovery() as follows,
             system_identifier::text = ? and current_database() = ? as same,
             pg_last_wal_replay_lsn() >= cast(? as pg_lsn) as reached
      from pg_control_system()
      """;

  private static final long LOOK_MS = 500;
  private static final long SHORTEST_PAUSE_MS = 10;
  private static final long PAUSE_WHEN_AWAY_MS = 2000;

  /** A page that finds no connection within that reads the primary. */
  private static final long LONGEST_WAIT_FOR_CONNECTION_MS = 1000;

  private final Account account;
  private final Writes writes;
  private final long mostBehindNanos;
  private final Clock clock;
  private final Line toPrimary;
  private final Line toStandby;
  private final HikariDataSource pool;
  private final Thread thread;
  private volatile @Nullable Followed followed;
  private volatile StandbyStand stand;
  private @Nullable Written awaited;

  /**
   * @param connections as many as the primary's pool has
   * @param initSql what is said first over each, as over those of the primary
   */
  Standby(
      Account primary,
      Account standby,
      int connections,
      String initSql,
      Writes writes,
      ReadProperties p,
      Clock clock) {
    this.account = standby;
    this.writes = writes;
    this.mostBehindNanos = p.mostBehind().toNanos();
    this.clock = clock;
    this.toPrimary = new Line(primary);
    this.toStandby = new Line(standby);
    this.pool = pool(standby, connections, initSql, p.patience());
    this.stand = new StandbyStand(Use.AWAY, "not looked at yet", clock.instant());
    this.thread = new Thread(this::watch, "standby");
    thread.setDaemon(true);
    thread.start();
  }

  /** The time for an answer is half of a page's: the other half is for asking the primary. */
  private static HikariDataSource pool(
      Account standby, int connections, String initSql, Duration patience) {
    HikariConfig config = new HikariConfig();
    config.setPoolName("standby");
    config.setJdbcUrl(standby.url());
    config.setUsername(standby.username());
    config.setPassword(standby.password());
    config.setReadOnly(true);
    config.setMaximumPoolSize(connections);
    config.setMinimumIdle(1);
    config.setInitializationFailTimeout(-1);
    config.setConnectionInitSql(initSql);
    config.setConnectionTimeout(LONGEST_WAIT_FOR_CONNECTION_MS);
    config.setValidationTimeout(LONGEST_WAIT_FOR_CONNECTION_MS);
    long answerS = Math.max(1, patience.toSeconds() / 2);
    config.addDataSourceProperty("connectTimeout", "2");
    config.addDataSourceProperty("socketTimeout", Long.toString(answerS));
    return new HikariDataSource(config);
  }

  /**
   * Whether it holds all that this instance has committed, and all that any other had committed not
   * longer ago than the bound.
   */
  boolean isFit() {
    Followed last = followed;
    return last != null && last.writes() == writes.count() && !isOld(last);
  }

  Connection connection() throws SQLException {
    return pool.getConnection();
  }

  StandbyStand stand() {
    return stand;
  }

  String address() {
    return account.toString();
  }

  /** It failed a page; not asked again before the next look finds it well. */
  void distrust(Exception failure) {
    followed = null;
    LOG.debug("a read of the standby failed", failure);
  }

  private boolean isOld(Followed last) {
    return System.nanoTime() - last.beganNanos() > mostBehindNanos;
  }

  private void watch() {
    long pauseMs = SHORTEST_PAUSE_MS;
    try {
      while (!Thread.currentThread().isInterrupted()) {
        Use use = look();
        Followed last = followed;
        if (use == Use.READ && last != null && awaited == null) {
          pauseMs = SHORTEST_PAUSE_MS;
          writes.awaitOtherThan(last.writes(), LOOK_MS);
        } else {
          Thread.sleep(use == Use.AWAY ? PAUSE_WHEN_AWAY_MS : pauseMs);
          pauseMs = Math.min(2 * pauseMs, LOOK_MS);
        }
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  private Use look() {
    try {
      Written written = awaited == null ? askPrimary() : awaited;
      if (hasReplayed(written)) {
        awaited = null;
        followed = new Followed(written.writes(), written.beganNanos());
      } else {
        awaited = written;
      }
      return tell();
    } catch (SQLException | Unfit failed) {
      awaited = null;
      followed = null;
      return tell(Use.AWAY, String.valueOf(failed.getMessage()));
    }
  }

  private Written askPrimary() throws SQLException {
    long counted = writes.count();
    long began = System.nanoTime();
    return toPrimary.ask(
        WRITTEN,
        row ->
            new Written(
                counted,
                began,
                row.getString("lsn"),
                row.getString("cluster"),
                row.getString("name")));
  }

  private boolean hasReplayed(Written written) throws SQLException, Unfit {
    Answer answer =
        toStandby.ask(
            FOLLOWED,
            row ->
                new Answer(
                    row.getBoolean("follows"), row.getBoolean("same"), row.getBoolean("reached")),
            written.cluster(),
            written.name(),
            written.lsn());
    if (!answer.follows()) {
      throw new Unfit("the server there is no standby: it is not in recovery");
    }
    if (!answer.same()) {
      throw new Unfit("the server there follows another database than the service's");
    }
    return answer.reached();
  }

  private Use tell() {
    Followed last = followed;
    if (last != null && !isOld(last)) {
      return tell(Use.READ, "");
    }
    long boundMs = Duration.ofNanos(mostBehindNanos).toMillis();
    return tell(Use.BEHIND, "it is more than " + boundMs + " ms behind");
  }

  /** Into the log only when it changes. */
  private Use tell(Use use, String why) {
    StandbyStand before = stand;
    if (before.use() == use) {
      stand = new StandbyStand(use, why, before.since());
      return use;
    }
    stand = new StandbyStand(use, why, clock.instant());
    if (use == Use.READ) {
      LOG.info("pages read the standby {}", account);
    } else {
      LOG.warn("pages read the primary, not the standby {}: {}", account, why);
      pool.getHikariPoolMXBean().softEvictConnections();
    }
    return use;
  }

  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join();
      toPrimary.close();
      toStandby.close();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (SQLException e) {
      LOG.debug("a connection did not close in order", e);
    } finally {
      pool.close();
    }
  }

  /**
   * How far the primary's log was written.
   *
   * @param writes what this instance had committed before it was asked
   * @param beganNanos when it was asked
   */
  private record Written(long writes, long beganNanos, String lsn, String cluster, String name) {}

  /** What is on the standby for certain. */
  private record Followed(long writes, long beganNanos) {}

  private record Answer(boolean follows, boolean same, boolean reached) {}

  /** A server that answers but is not what it should be. */
  private static final class Unfit extends Exception {

    private static final long serialVersionUID = 1L;

    Unfit(String why) {
      super(why);
    }
  }
}
