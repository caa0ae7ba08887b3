package org.limbspan.platform.reads;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Optional;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.datasource.AbstractDataSource;

/**
 * Connections for read-only transactions.
 *
 * <p>A page waits for a silent primary no longer than the patience, by a timeout of the socket: a
 * server that is frozen would not heed one of its own. It is set for reads of pages alone. An
 * import, an export, a migration may rightly wait for minutes for one statement, and a write that
 * is given up leaves its sender in doubt whether it is stored.
 */
final class ReadSource extends AbstractDataSource {

  private final DataSource primary;
  private final @Nullable Standby standby;
  private final int patienceMs;

  ReadSource(DataSource primary, @Nullable Standby standby, Duration patience) {
    this.primary = primary;
    this.standby = standby;
    this.patienceMs = Math.toIntExact(patience.toMillis());
  }

  @Override
  public Connection getConnection() throws SQLException {
    Optional<PageRead> page = PageRead.current();
    Connection found = page.isPresent() ? ofStandby(page.get()) : null;
    return found == null ? ofPrimary(page.isPresent()) : found;
  }

  @Override
  public Connection getConnection(String username, String password) throws SQLException {
    return primary.getConnection(username, password);
  }

  private @Nullable Connection ofStandby(PageRead page) {
    if (standby == null || !page.goesToStandby(standby::isFit)) {
      return null;
    }
    try {
      return standby.connection();
    } catch (SQLException failed) {
      standby.distrust(failed);
      page.stayOnPrimary();
      return null;
    }
  }

  private Connection ofPrimary(boolean forPage) throws SQLException {
    Connection connection = primary.getConnection();
    try {
      connection.setReadOnly(true);
      if (forPage) {
        connection.setNetworkTimeout(Runnable::run, patienceMs);
      }
      return connection;
    } catch (SQLException failed) {
      connection.close();
      throw failed;
    }
  }
}
