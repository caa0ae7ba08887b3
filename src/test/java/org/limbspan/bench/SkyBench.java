package org.limbspan.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.LongSupplier;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

/**
 * Prints how fast the sky is computed: processor time of one thread, which a busy machine disturbs
 * little; the best and the median of several rounds after warming up.
 */
public final class SkyBench {

  private static final int ROUNDS = 9;
  private static final int SIGHTS = 100_000;

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private SkyBench() {}

  public static void main(String[] args) {
    long start = THREADS.getCurrentThreadCpuTime();
    Sky sky = SkyFixture.sky();
    System.out.printf("start-up (file, checks, Orekit's tables) %d ms%n", millis(start));
    Site site = new Site(48.1, 11.6, 520);
    Instant[] random = instants(sky);
    Instant[] sorted = random.clone();
    Arrays.sort(sorted);
    report("moonAt, random instants over 80 years", SIGHTS, () -> sights(sky, site, random));
    report("moonAt, the same sorted", SIGHTS, () -> sights(sky, site, sorted));
    Instant from = Instant.parse("2020-01-01T00:00:00Z");
    report(
        "apsides of 10 years", 1, () -> sky.apsides(from, from.plus(Duration.ofDays(3652))).size());
    report(
        "passes of a year",
        1,
        () -> sky.passes(from, from.plus(Duration.ofDays(365)), site).size());
    report(
        "passes of a day", 1, () -> sky.passes(from, from.plus(Duration.ofDays(1)), site).size());
    report("daysFromPerigee", SIGHTS, () -> days(sky, random));
  }

  private static Instant[] instants(Sky sky) {
    SplittableRandom random = new SplittableRandom(7);
    long span = Duration.between(sky.ephemerisFrom(), sky.ephemerisTo()).toMillis();
    return random
        .longs(SIGHTS, 0, span)
        .mapToObj(millis -> sky.ephemerisFrom().plusMillis(millis))
        .toArray(Instant[]::new);
  }

  private static long sights(Sky sky, Site site, Instant[] instants) {
    double sum = 0;
    for (Instant at : instants) {
      sum += sky.moonAt(at, site).azimuthDeg();
    }
    return Double.doubleToLongBits(sum);
  }

  private static long days(Sky sky, Instant[] instants) {
    double sum = 0;
    for (Instant at : instants) {
      sum += sky.daysFromPerigee(at);
    }
    return Double.doubleToLongBits(sum);
  }

  private static void report(String what, int times, LongSupplier work) {
    double[] seconds = new double[ROUNDS];
    long checksum = 0;
    for (int round = -3; round < ROUNDS; round++) {
      long start = THREADS.getCurrentThreadCpuTime();
      checksum += work.getAsLong();
      if (round >= 0) {
        seconds[round] = (THREADS.getCurrentThreadCpuTime() - start) * 1e-9;
      }
    }
    Arrays.sort(seconds);
    double best = seconds[0];
    double median = seconds[ROUNDS / 2];
    System.out.printf(
        "%-40s best %9.3f ms, median %9.3f ms; %,.0f /s best, %,.0f /s median (checksum %d)%n",
        what, best * 1e3, median * 1e3, times / best, times / median, checksum % 97);
  }

  private static long millis(long start) {
    return Math.round((THREADS.getCurrentThreadCpuTime() - start) * 1e-6);
  }
}
