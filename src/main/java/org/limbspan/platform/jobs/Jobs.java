package org.limbspan.platform.jobs;

import com.github.kagkarlsson.scheduler.ScheduledExecution;
import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.exceptions.TaskInstanceCurrentlyExecutingException;
import com.github.kagkarlsson.scheduler.exceptions.TaskInstanceNotFoundException;
import com.github.kagkarlsson.scheduler.task.TaskInstanceId;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.shaded.jdbc.SQLRuntimeException;
import io.micrometer.core.instrument.MeterRegistry;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.limbspan.platform.Unavailable;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;

/**
 * Runs the declared jobs of this instance and of all others over the same database, each job on one
 * of them. An instance that dies with a job in hand sends no heartbeats any more, and another takes
 * it over.
 */
public final class Jobs {

  /** The fewest that the library allows. */
  static final int MISSED_HEARTBEATS = 4;

  private static final int THREADS = 2;
  private static final Duration LONGEST_FAREWELL = Duration.ofSeconds(8);

  private final Scheduler scheduler;
  private final Clock clock;

  Jobs(
      DataSource source,
      Clock clock,
      JobProperties properties,
      MeterRegistry registry,
      List<Job> jobs) {
    this.clock = clock;
    this.scheduler =
        Scheduler.create(source)
            .startTasks(jobs.stream().map(job -> DeclaredTask.of(job, registry)).toList())
            .schedulerName(
                new SchedulerName.Fixed(ProcessHandle.current().pid() + "-" + UUID.randomUUID()))
            .clock(clock::instant)
            .threads(THREADS)
            .pollingInterval(properties.look())
            .enableImmediateExecution()
            .heartbeatInterval(properties.heartbeat())
            .missedHeartbeatsLimit(MISSED_HEARTBEATS)
            .shutdownMaxWait(LONGEST_FAREWELL)
            .build();
  }

  @EventListener(ApplicationReadyEvent.class)
  void start() {
    scheduler.start();
  }

  /** What is in hand is asked to end, and interrupted if it does not. */
  void stop() {
    scheduler.stop();
  }

  /**
   * Makes a job due now, on whichever instance looks first, which is usually this one.
   *
   * @return whether it will run; not if it is running just now, or nobody has declared it
   */
  public boolean runSoon(String name) {
    try {
      return scheduler.reschedule(id(name), clock.instant());
    } catch (TaskInstanceCurrentlyExecutingException | TaskInstanceNotFoundException cannot) {
      return false;
    }
  }

  /**
   * How a job fares; empty if it was never declared over this database.
   *
   * @throws Unavailable if the database does not answer
   */
  public Optional<JobState> state(String name) {
    return scheduled(name)
        .map(
            its ->
                new JobState(
                    its.getExecutionTime(),
                    its.getLastSuccess(),
                    its.getLastFailure(),
                    its.getConsecutiveFailures()));
  }

  private Optional<ScheduledExecution<Object>> scheduled(String name) {
    try {
      return scheduler.getScheduledExecution(id(name));
    } catch (SQLRuntimeException failed) {
      throw new Unavailable("The database does not answer just now.");
    }
  }

  private static TaskInstanceId id(String name) {
    return TaskInstanceId.of(name, RecurringTask.INSTANCE);
  }
}
