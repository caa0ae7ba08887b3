package org.limbspan.platform.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import org.limbspan.platform.StartRefused;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/**
 * The running PostgreSQL of this service: started before anything connects, restarted when it dies,
 * stopped after the last connection is closed.
 */
final class EmbeddedDatabase implements JdbcConnectionDetails, AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(EmbeddedDatabase.class);
  private static final int ATTEMPTS = 6;
  private static final long PAUSE_MS = 2000;

  private final Home home;
  private final Cluster cluster;
  private final int port;
  private final String password;
  private final Supervisor supervisor;

  private EmbeddedDatabase(Home home, Cluster cluster, int port) throws IOException {
    this.home = home;
    this.cluster = cluster;
    this.port = port;
    this.password = cluster.password();
    this.supervisor = new Supervisor(cluster::serving, () -> cluster.start(port));
  }

  /**
   * Starts the server over the data in a home.
   *
   * @throws StartRefused if the home or the data in it cannot be used
   */
  static EmbeddedDatabase start(String homeName) {
    Home home = Home.open(homeName);
    try {
      return start(home, Cluster.in(home));
    } catch (RuntimeException e) {
      home.close();
      throw e;
    }
  }

  private static EmbeddedDatabase start(Home home, Cluster cluster) {
    try {
      int port = startOnFreePort(home, cluster);
      OwnDatabase.create(port, cluster.password());
      LOG.info("PostgreSQL serves {} on port {}", home.directory(), port);
      return new EmbeddedDatabase(home, cluster, port);
    } catch (IOException e) {
      throw new UncheckedIOException("the database in " + home.directory() + " cannot be used", e);
    } catch (IllegalStateException e) {
      if (cluster.isServing()) {
        cluster.stop();
      }
      throw e;
    }
  }

  @Override
  public String getJdbcUrl() {
    return OwnDatabase.url(port, OwnDatabase.NAME);
  }

  @Override
  public String getUsername() {
    return OwnDatabase.NAME;
  }

  @Override
  public String getPassword() {
    return password;
  }

  /** Finishes even for a thread that was told to hurry; the next start would have to clean up. */
  @Override
  public void close() {
    boolean interrupted = Thread.interrupted();
    try {
      supervisor.close();
      if (cluster.isServing()) {
        cluster.stop();
        LOG.info("PostgreSQL stopped");
      }
    } finally {
      home.close();
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  /** Another program may take the port in between, or remains of a killed server need a moment. */
  private static int startOnFreePort(Home home, Cluster cluster) throws IOException {
    ProgramFailed failure = null;
    for (int attempt = 1; attempt <= ATTEMPTS; attempt++) {
      int port = freePort();
      try {
        cluster.start(port);
        return port;
      } catch (ProgramFailed e) {
        failure = e;
        LOG.warn("PostgreSQL did not start, attempt {} of {}", attempt, ATTEMPTS);
        pause();
      }
    }
    throw new StartRefused(
        "PostgreSQL does not start in " + home.directory() + ". It said:\n" + cluster.lastWords(),
        "The whole log is " + home.resolve("database.log") + ".",
        failure);
  }

  private static int freePort() throws IOException {
    InetAddress loopback = InetAddress.getByAddress(new byte[] {127, 0, 0, 1});
    try (ServerSocket socket = new ServerSocket(0, 1, loopback)) {
      return socket.getLocalPort();
    }
  }

  private static void pause() {
    try {
      Thread.sleep(PAUSE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while PostgreSQL was starting", e);
    }
  }
}
