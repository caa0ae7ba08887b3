package org.limbspan.platform.jobs;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.postgresql.ds.PGSimpleDataSource;

/** An instance in a process of its own that takes a job in hand and never ends it. */
final class DoomedInstance {

  private DoomedInstance() {}

  public static void main(String[] arguments) throws Exception {
    PGSimpleDataSource source = new PGSimpleDataSource();
    source.setUrl(arguments[0]);
    source.setUser(arguments[1]);
    source.setPassword(arguments[2]);
    Job job =
        new Job(
            JobsIT.TAKEN_OVER,
            after -> after.plusMillis(100),
            stopping -> {
              System.out.println("has it in hand");
              Thread.sleep(Duration.ofHours(1).toMillis());
            });
    Jobs jobs =
        new Jobs(source, Clock.systemUTC(), JobsIT.QUICK, new SimpleMeterRegistry(), List.of(job));
    jobs.start();
    Thread.sleep(Duration.ofHours(1).toMillis());
  }
}
