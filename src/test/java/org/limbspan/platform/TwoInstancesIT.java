package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.limbspan.platform.jobs.Jobs;
import org.limbspan.testing.Judged;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.ServiceInstance;
import org.limbspan.testing.TestDatabase;

/** Two services over one database, as behind a proxy that asks them in turn. */
class TwoInstancesIT {

  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private static ServiceInstance first;
  private static ServiceInstance second;

  @BeforeAll
  static void start() {
    TestDatabase database = TestDatabase.fresh();
    first = ServiceInstance.over(database);
    second = ServiceInstance.over(database);
  }

  @AfterAll
  static void end() {
    Stream.of(second, first).filter(instance -> instance != null).forEach(ServiceInstance::close);
  }

  @Test
  void judgesOnceWhatOneOfThemTookAndBothKnowIt() {
    RigClient atFirst = RigClient.described(first.http(), "two-judged");
    RigClient atSecond = new RigClient(second.http(), "two-judged");
    Judged.get(atSecond, "/cycle");
    double before = judged(first) + judged(second);
    int taken = 6;
    for (int night = 1; night <= taken; night++) {
      assertThat(atFirst.postJson("/readings", reading(night)).status()).isEqualTo(200);
      assertThat(atSecond.get("/readings").body().path("readings")).hasSize(night);
      assertThat(Judged.get(atSecond, "/cycle")).isEqualTo(Judged.get(atFirst, "/cycle"));
    }
    // the other may look for what is behind, every 30 s, in the very moment before it is judged
    assertThat(judged(first) + judged(second) - before).isBetween((double) taken, taken + 1.0);
  }

  @Test
  void tellsAPageOfOneWhatTheOtherTook() throws Exception {
    RigClient atFirst = RigClient.described(first.http(), "two-live");
    Judged.get(atFirst, "/cycle");
    List<String> told = new CopyOnWriteArrayList<>();
    HttpResponse<Stream<String>> live = open(second.address() + "/rigs/two-live/live");
    Thread listener =
        new Thread(() -> live.body().filter(line -> line.startsWith("data:")).forEach(told::add));
    listener.setDaemon(true);
    listener.start();
    await(() -> !told.isEmpty());
    String greeting = told.get(0);

    assertThat(atFirst.postJson("/readings", reading(1)).status()).isEqualTo(200);

    await(() -> !last(told).equals(greeting));
    Judged.get(atFirst, "/cycle");
    // what the page carries once it is written anew
    await(() -> page("/rigs/two-live").contains("data-stand=\"" + last(told).substring(5) + "\""));
    live.body().close();
  }

  @Test
  void doesAJobOnOneOfThem() throws Exception {
    RigClient.described(first.http(), "two-copied");
    double before = done(first) + done(second);
    first.http().post().uri("/api/copies").exchange().expectStatus().isAccepted();
    await(() -> done(first) + done(second) > before);
    assertThat(done(first) + done(second) - before).isEqualTo(1);
    var state = first.bean(Jobs.class).state("ledger-copies").orElseThrow();
    assertThat(second.bean(Jobs.class).state("ledger-copies")).contains(state);
    assertThat(state.lastDone()).isNotNull();
  }

  private static String reading(int night) {
    return """
    {"takenAt": "2026-03-%02dT21:00:00Z", "axis": "horizontal", "diameterArcmin": 31.2,
     "uncertaintyArcmin": 0.05}"""
        .formatted(night);
  }

  private static double judged(ServiceInstance instance) {
    return count(instance, "limbspan.judging.duration");
  }

  private static double done(ServiceInstance instance) {
    return instance
        .bean(MeterRegistry.class)
        .find("limbspan.job.duration")
        .tags("job", "ledger-copies", "outcome", "done")
        .timers()
        .stream()
        .mapToLong(Timer::count)
        .sum();
  }

  private static double count(ServiceInstance instance, String timer) {
    return instance.bean(MeterRegistry.class).get(timer).timer().count();
  }

  private static String last(List<String> told) {
    return told.get(told.size() - 1);
  }

  private static HttpResponse<Stream<String>> open(String address) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create(address)).build(),
            HttpResponse.BodyHandlers.ofLines());
  }

  private static String page(String path) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create(second.address() + path)).build(),
            HttpResponse.BodyHandlers.ofString())
        .body();
  }

  private static void await(Callable<Boolean> wanted) throws Exception {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!wanted.call()) {
      assertThat(System.nanoTime()).as("still waiting").isLessThan(deadline);
      Thread.sleep(50);
    }
  }
}
