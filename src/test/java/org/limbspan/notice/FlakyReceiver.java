package org.limbspan.notice;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** A receiver of webhooks on the loopback interface that does what it is told to do wrong. */
final class FlakyReceiver implements AutoCloseable {

  /** What it does with a notice. */
  enum Mood {
    TAKES,
    /** Reads, takes nothing, answers 500. */
    FAILS,
    /** Takes the notice, and answers when nobody listens any more. */
    HANGS,
    /** Takes the notice and hangs up without an answer. */
    DROPS,
    /** Takes nothing and leads elsewhere. */
    REDIRECTS
  }

  /** A notice that arrived, whatever was answered. */
  record Arrival(String id, String timestamp, String signature, String body, Mood mood) {}

  private static final long HANGING_MILLIS = 6000;

  private final HttpServer server;
  private final ExecutorService workers = Executors.newCachedThreadPool();
  private final Queue<Mood> moods = new ConcurrentLinkedQueue<>();
  private final List<Arrival> arrivals = new CopyOnWriteArrayList<>();
  private final Set<String> taken = ConcurrentHashMap.newKeySet();
  private final List<String> takenInOrder = new CopyOnWriteArrayList<>();
  private final AtomicInteger atOnce = new AtomicInteger();
  private final AtomicInteger mostAtOnce = new AtomicInteger();
  private volatile long slowMillis;

  FlakyReceiver() {
    try {
      server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    } catch (IOException e) {
      throw new IllegalStateException("no receiver", e);
    }
    server.createContext("/", this::receive);
    server.setExecutor(workers);
    server.start();
  }

  String address() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/hook?key=of-the-receiver";
  }

  /** How it takes the next ones; then it takes all. */
  void beInMoods(List<Mood> next) {
    moods.addAll(next);
  }

  void beSlow(long millis) {
    slowMillis = millis;
  }

  List<Arrival> arrivals() {
    return List.copyOf(arrivals);
  }

  /** The bodies that it took, without those whose id it had already. */
  List<String> taken() {
    return List.copyOf(takenInOrder);
  }

  int mostAtOnce() {
    return mostAtOnce.get();
  }

  private void receive(HttpExchange exchange) throws IOException {
    mostAtOnce.accumulateAndGet(atOnce.incrementAndGet(), Math::max);
    try {
      String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
      Mood mood = moods.isEmpty() ? Mood.TAKES : moods.remove();
      String id = header(exchange, "Limbspan-Notice");
      arrivals.add(
          new Arrival(
              id,
              header(exchange, "Limbspan-Timestamp"),
              header(exchange, "Limbspan-Signature"),
              body,
              mood));
      boolean takes = mood != Mood.FAILS && mood != Mood.REDIRECTS;
      if (takes && taken.add(id)) {
        takenInOrder.add(body);
      }
      answer(exchange, mood);
    } finally {
      atOnce.decrementAndGet();
    }
  }

  private void answer(HttpExchange exchange, Mood mood) throws IOException {
    pause(mood == Mood.HANGS ? HANGING_MILLIS : slowMillis);
    switch (mood) {
      case TAKES, HANGS -> exchange.sendResponseHeaders(204, -1);
      case FAILS -> exchange.sendResponseHeaders(500, -1);
      case REDIRECTS -> {
        exchange.getResponseHeaders().set("Location", "/elsewhere");
        exchange.sendResponseHeaders(307, -1);
      }
      case DROPS -> {
        // closing without headers hangs up
      }
    }
    exchange.close();
  }

  private static String header(HttpExchange exchange, String name) {
    String value = exchange.getRequestHeaders().getFirst(name);
    return value == null ? "" : value;
  }

  private static void pause(long millis) {
    try {
      TimeUnit.MILLISECONDS.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    server.stop(0);
    workers.shutdownNow();
  }
}
