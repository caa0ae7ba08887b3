package org.limbspan.platform.database;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks every two seconds whether the server lives, and starts it again if not: so it is back
 * within the five seconds that a request waits for a connection.
 */
final class Supervisor implements AutoCloseable {

  /** Starts the server. */
  @FunctionalInterface
  interface Starter {
    void start() throws IOException;
  }

  private static final Logger LOG = LoggerFactory.getLogger(Supervisor.class);
  private static final long LOOK_MS = 2000;
  private static final long FIRST_RETRY_MS = 1000;
  private static final long LONGEST_RETRY_MS = 30_000;

  private final Supplier<Optional<ServingProcess>> finder;
  private final Starter starter;
  private final Thread thread;
  private @Nullable ServingProcess server;

  Supervisor(Supplier<Optional<ServingProcess>> finder, Starter starter) {
    this.finder = finder;
    this.starter = starter;
    this.thread = new Thread(this::watch, "database-supervisor");
    thread.setDaemon(true);
    thread.start();
  }

  /** Returns when the server is left alone for good. */
  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void watch() {
    long pauseMs = LOOK_MS;
    long retryMs = FIRST_RETRY_MS;
    try {
      while (!Thread.currentThread().isInterrupted()) {
        Thread.sleep(pauseMs);
        if (isWell()) {
          pauseMs = LOOK_MS;
          retryMs = FIRST_RETRY_MS;
        } else {
          pauseMs = retryMs;
          retryMs = Math.min(2 * retryMs, LONGEST_RETRY_MS);
        }
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  /** Whoever was found to serve is not looked for again until it ends. */
  private boolean isWell() {
    try {
      if (server != null && server.lives()) {
        return true;
      }
      server = finder.get().orElse(null);
      if (server == null) {
        LOG.error("PostgreSQL is gone; starting it again");
        starter.start();
        LOG.info("PostgreSQL is back");
      }
      return true;
    } catch (IOException | RuntimeException e) {
      LOG.error("PostgreSQL cannot be started: {}", e.getMessage());
      return false;
    }
  }
}
