package org.limbspan.dashboard;

import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.limbspan.platform.Unavailable;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/**
 * The open pages that are told news. One thread writes to all of them, so that a request is never
 * kept waiting by a page that reads slowly; a page that cannot be written to is let go.
 *
 * <p>Ends before the web server does: it waits for requests under way, and these would never end of
 * themselves.
 */
@Component
class LiveReaders implements SmartLifecycle {

  /** More pages than one owner opens; fewer than would keep the service busy. */
  static final int MOST = 64;

  /** A browser asks again after that; until then an ended connection costs nothing. */
  private static final long LIFETIME_MILLIS = Duration.ofHours(12).toMillis();

  private static final long RETRY_MILLIS = 3000;

  /** Below the minute after which proxies and browsers give a silent connection up. */
  private static final long HEARTBEAT_SECONDS = 20;

  private final Map<SseEmitter, Long> rigOfReader = new ConcurrentHashMap<>();
  private volatile ScheduledExecutorService writer = writer();
  private volatile boolean running;

  private static ScheduledExecutorService writer() {
    return Executors.newSingleThreadScheduledExecutor(task -> daemon(task));
  }

  private static Thread daemon(Runnable task) {
    Thread thread = new Thread(task, "live");
    thread.setDaemon(true);
    return thread;
  }

  /**
   * A page of that rig, told all news from now on.
   *
   * @throws Unavailable if as many pages are open as can be, or the service is stopping
   */
  SseEmitter join(long rigId) {
    SseEmitter reader = new SseEmitter(LIFETIME_MILLIS);
    synchronized (rigOfReader) {
      if (!running) {
        throw new Unavailable("The service is stopping.");
      }
      if (rigOfReader.size() >= MOST) {
        throw new Unavailable("As many pages are open as can be told news: " + MOST + ".");
      }
      rigOfReader.put(reader, rigId);
    }
    reader.onCompletion(() -> rigOfReader.remove(reader));
    reader.onTimeout(reader::complete);
    reader.onError(gone -> rigOfReader.remove(reader));
    return reader;
  }

  /** Tells a new page the stand of the ledger at or after its joining. */
  void greet(SseEmitter reader, String stand) {
    run(
        () ->
            send(reader, SseEmitter.event().reconnectTime(RETRY_MILLIS).name("stand").data(stand)));
  }

  /** Whether any page of that rig is open. */
  boolean areOf(long rigId) {
    return rigOfReader.containsValue(rigId);
  }

  /** Of which rigs pages are open. */
  Set<Long> rigs() {
    return Set.copyOf(rigOfReader.values());
  }

  /** How many pages are open. */
  int count() {
    return rigOfReader.size();
  }

  /** Tells all open pages of a rig; returns at once. */
  void tell(long rigId, String event, String sentence) {
    run(
        () ->
            rigOfReader.forEach(
                (reader, its) -> {
                  if (its == rigId) {
                    send(reader, SseEmitter.event().name(event).data(sentence));
                  }
                }));
  }

  private void beat() {
    rigOfReader.keySet().forEach(reader -> send(reader, SseEmitter.event().comment("still here")));
  }

  private void send(SseEmitter reader, SseEmitter.SseEventBuilder event) {
    try {
      reader.send(event);
    } catch (IOException | IllegalStateException gone) {
      rigOfReader.remove(reader);
    }
  }

  /** Runs a task on the writing thread; after the end, not at all. */
  void run(Runnable task) {
    try {
      writer.execute(task);
    } catch (RejectedExecutionException ended) {
      // Nobody is left to be told.
      return;
    }
  }

  /** Also after an end: a service may pause. */
  @Override
  public void start() {
    if (writer.isShutdown()) {
      writer = writer();
    }
    running = true;
    var unused =
        writer.scheduleWithFixedDelay(
            this::beat, HEARTBEAT_SECONDS, HEARTBEAT_SECONDS, TimeUnit.SECONDS);
  }

  @Override
  public void stop() {
    synchronized (rigOfReader) {
      running = false;
    }
    rigOfReader.keySet().forEach(SseEmitter::complete);
    writer.shutdownNow();
  }

  @Override
  public boolean isRunning() {
    return running;
  }

  /** The first to stop: above the phase in which the web server waits for its requests. */
  @Override
  public int getPhase() {
    return SmartLifecycle.DEFAULT_PHASE;
  }
}
