package org.limbspan.platform.jobs;

import java.util.function.BooleanSupplier;
import java.util.regex.Pattern;

/**
 * Something done again and again. It may be done twice: whoever had it in hand may have died after
 * the work and before saying so.
 *
 * @param name the same in every instance and version: lower-case words joined by hyphens
 */
public record Job(String name, JobTimes times, Work work) {

  private static final Pattern NAME = Pattern.compile("[a-z]+(?:-[a-z]+)*");

  /** What a job does. */
  @FunctionalInterface
  public interface Work {

    /**
     * Does it once; an exception is logged, counts as a failure, and it is done again at its next
     * time.
     *
     * @param stopping whether the service is stopping, so that the rest should be left
     */
    void run(BooleanSupplier stopping) throws Exception;
  }

  public Job {
    if (!NAME.matcher(name).matches()) {
      throw new IllegalArgumentException(
          "name is '" + name + "'; expected lower-case words joined by hyphens");
    }
  }
}
