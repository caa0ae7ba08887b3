package org.limbspan.bench.service;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Asks for pages and health again and again, and keeps what changed when. */
final class Onlooker implements AutoCloseable {

  private static final long PAUSE_MILLIS = 500;

  private final Http http;
  private final List<String> paths;
  private final Map<String, Integer> last = new TreeMap<>();
  private final List<String> changes = new ArrayList<>();
  private final Thread thread = new Thread(this::run, "onlooker");
  private final long began = System.nanoTime();
  private Duration longest = Duration.ZERO;

  Onlooker(Http http, List<String> paths) {
    this.http = http;
    this.paths = paths;
    thread.setDaemon(true);
    thread.start();
  }

  /** Lines of seconds since the beginning, path, status and words. */
  synchronized List<String> changes() {
    return List.copyOf(changes);
  }

  synchronized Duration longest() {
    return longest;
  }

  @Override
  public void close() {
    thread.interrupt();
  }

  private void run() {
    try {
      while (!Thread.currentThread().isInterrupted()) {
        for (String path : paths) {
          look(path);
        }
        Thread.sleep(PAUSE_MILLIS);
      }
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }

  private void look(String path) throws InterruptedException {
    long asked = System.nanoTime();
    Http.Reply reply = http.get(path);
    Duration took = Duration.ofNanos(System.nanoTime() - asked);
    synchronized (this) {
      longest = took.compareTo(longest) > 0 ? took : longest;
      Integer before = last.put(path, reply.status());
      if (before == null || before != reply.status()) {
        String words = reply.status() == 200 ? "" : String.valueOf(reply.problem());
        changes.add(
            "  at %5.1f s %s: %d %s (after %.1f s)"
                .formatted(
                    (asked - began) / 1e9,
                    path,
                    reply.status(),
                    words.substring(0, Math.min(160, words.length())),
                    took.toMillis() / 1000.0));
      }
    }
  }
}
