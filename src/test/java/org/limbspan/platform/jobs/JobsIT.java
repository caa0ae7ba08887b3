package org.limbspan.platform.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.ChildJvm;
import org.limbspan.testing.TestDatabase;
import org.postgresql.ds.PGSimpleDataSource;
import org.slf4j.MDC;

/** Two instances over one database. */
class JobsIT {

  static final String TAKEN_OVER = "taken-over";
  static final JobProperties QUICK =
      new JobProperties(Duration.ofMillis(100), Duration.ofMillis(250));

  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final Clock CLOCK = Clock.systemUTC();
  private static final Duration NEVER_AGAIN = Duration.ofDays(1);

  private final TestDatabase database = TestDatabase.fresh();
  private final List<Jobs> running = new ArrayList<>();

  @BeforeEach
  void makesTheTables() {
    Flyway.configure().dataSource(source()).locations("classpath:migrations").load().migrate();
  }

  @AfterEach
  void stops() {
    running.forEach(Jobs::stop);
  }

  @Test
  void runsAJobOnceHoweverManyInstancesThereAre() throws Exception {
    List<String> done = Collections.synchronizedList(new ArrayList<>());
    for (int instance = 0; instance < 3; instance++) {
      instance(
          QUICK,
          IntStream.range(0, 26)
              .mapToObj(i -> "letter-" + (char) ('a' + i))
              .map(name -> new Job(name, JobTimes.every(NEVER_AGAIN), stopping -> done.add(name)))
              .toArray(Job[]::new));
    }
    assertThat(done).isEmpty();
    try (Connection connection = source().getConnection();
        Statement statement = connection.createStatement()) {
      assertThat(statement.executeUpdate("update scheduled_tasks set execution_time = now()"))
          .isEqualTo(26);
    }
    await(() -> done.size() >= 26);
    Thread.sleep(1000);
    assertThat(done).hasSize(26).doesNotHaveDuplicates();
  }

  @Test
  void takesAJobOverFromAnInstanceThatWasKilled() throws Exception {
    try (ChildJvm doomed =
        ChildJvm.run(
            DoomedInstance.class.getName(),
            database.url(),
            database.username(),
            database.password())) {
      doomed.await("has it in hand"::equals);
      CountDownLatch taken = new CountDownLatch(1);
      Jobs heir =
          instance(
              QUICK,
              new Job(TAKEN_OVER, JobTimes.every(NEVER_AGAIN), stopping -> taken.countDown()));
      // as long as the other lives it has the job
      assertThat(taken.await(3, TimeUnit.SECONDS)).isFalse();
      assertThat(heir.runSoon(TAKEN_OVER)).isFalse();
      doomed.kill();
      assertThat(taken.await(PATIENCE.toSeconds(), TimeUnit.SECONDS)).isTrue();
      await(() -> heir.state(TAKEN_OVER).orElseThrow().lastDone() != null);
    }
  }

  @Test
  void leavesAJobToTheNextInstanceWhenStoppedInOrder() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    AtomicBoolean told = new AtomicBoolean();
    Jobs first =
        instance(
            QUICK,
            new Job(
                "patient",
                after -> after.plusMillis(100),
                stopping -> {
                  begun.countDown();
                  await(stopping);
                  told.set(true);
                }));
    assertThat(begun.await(PATIENCE.toSeconds(), TimeUnit.SECONDS)).isTrue();
    running.remove(first);
    first.stop();
    assertThat(told).isTrue();
    CountDownLatch again = new CountDownLatch(1);
    instance(QUICK, new Job("patient", JobTimes.every(NEVER_AGAIN), stopping -> again.countDown()));
    assertThat(again.await(PATIENCE.toSeconds(), TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void runsAtOnceWhatIsAskedForAndDoesNotWaitForTheNextLook() throws Exception {
    List<String> names = Collections.synchronizedList(new ArrayList<>());
    Jobs jobs =
        instance(
            new JobProperties(Duration.ofHours(1), Duration.ofMinutes(1)),
            new Job(
                "asked-for", JobTimes.every(NEVER_AGAIN), stopping -> names.add(MDC.get("job"))));
    Thread.sleep(500);
    assertThat(names).isEmpty();
    assertThat(jobs.runSoon("asked-for")).isTrue();
    await(() -> jobs.state("asked-for").orElseThrow().lastDone() != null);
    assertThat(names).containsExactly("asked-for");
    assertThat(jobs.state("asked-for").orElseThrow().due())
        .isAfter(CLOCK.instant().plus(Duration.ofHours(23)));
    assertThat(jobs.runSoon("nobodys")).isFalse();
  }

  @Test
  void countsFailuresAndGoesOn() throws Exception {
    AtomicBoolean well = new AtomicBoolean();
    Jobs jobs =
        instance(
            QUICK,
            new Job(
                "unwell",
                JobTimes.every(Duration.ofMillis(100)),
                stopping -> {
                  if (!well.get()) {
                    throw new java.io.IOException("no room, as this test wants it");
                  }
                }));
    await(() -> jobs.state("unwell").orElseThrow().failures() >= 3);
    assertThat(jobs.state("unwell").orElseThrow().lastDone()).isNull();
    well.set(true);
    await(() -> jobs.state("unwell").orElseThrow().failures() == 0);
    assertThat(jobs.state("unwell").orElseThrow().lastFailed()).isNotNull();
  }

  private Jobs instance(JobProperties properties, Job... jobs) {
    Jobs instance = new Jobs(source(), CLOCK, properties, new SimpleMeterRegistry(), List.of(jobs));
    running.add(instance);
    instance.start();
    return instance;
  }

  private DataSource source() {
    PGSimpleDataSource source = new PGSimpleDataSource();
    source.setUrl(database.url());
    source.setUser(database.username());
    source.setPassword(database.password());
    return source;
  }

  private static void await(BooleanSupplier wanted) throws InterruptedException {
    Instant deadline = CLOCK.instant().plus(PATIENCE);
    while (!wanted.getAsBoolean()) {
      assertThat(CLOCK.instant()).isBefore(deadline);
      Thread.sleep(20);
    }
  }
}
