package org.limbspan.platform.jobs;

import com.github.kagkarlsson.scheduler.SchedulerState;
import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.Schedule;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Duration;
import java.time.Instant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;

/** A job in the terms of the library. */
final class DeclaredTask {

  private static final Logger LOG = LoggerFactory.getLogger(DeclaredTask.class);

  /** Under which the log knows the job. */
  private static final String MDC_KEY = "job";

  private DeclaredTask() {}

  static RecurringTask<Void> of(Job job, MeterRegistry registry) {
    Timer done = timer(job, "done", registry);
    Timer failed = timer(job, "failed", registry);
    return Tasks.recurring(job.name(), new Times(job.times()))
        .execute((instance, context) -> run(job, context.getSchedulerState(), done, failed));
  }

  private static Timer timer(Job job, String outcome, MeterRegistry registry) {
    return Timer.builder("limbspan.job.duration")
        .description("Time that jobs took on this instance")
        .tag("job", job.name())
        .tag("outcome", outcome)
        .register(registry);
  }

  private static void run(Job job, SchedulerState state, Timer done, Timer failures) {
    long began = System.nanoTime();
    MDC.put(MDC_KEY, job.name());
    try {
      LOG.debug("job {} begins", job.name());
      job.work().run(state::isShuttingDown);
      done.record(Duration.ofNanos(System.nanoTime() - began));
      LOG.debug("job {} is done", job.name());
    } catch (Exception failed) {
      failures.record(Duration.ofNanos(System.nanoTime() - began));
      if (failed instanceof InterruptedException) {
        Thread.currentThread().interrupt();
      }
      throw new JobFailed(job.name(), failed);
    } finally {
      MDC.remove(MDC_KEY);
    }
  }

  /** Told to the library, which counts failures and says in the log what the cause was. */
  private static final class JobFailed extends RuntimeException {

    private static final long serialVersionUID = 1L;

    JobFailed(String name, Exception cause) {
      super("job " + name + " failed; done again at its next time", cause);
    }
  }

  /** Not deterministic: what is due stays due at the start of a service. */
  private record Times(JobTimes times) implements Schedule {

    @Override
    public Instant getNextExecutionTime(ExecutionComplete done) {
      return times.next(done.getTimeDone());
    }

    @Override
    public boolean isDeterministic() {
      return false;
    }
  }
}
