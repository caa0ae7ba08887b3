package org.limbspan.reading;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/**
 * Minds how busy this service is with taking readings in, so that work which can wait gives way:
 * somebody waits for an upload, nobody for a judgement of years of readings.
 */
@Component
public class IntakeTraffic {

  /** Who sends many files sends the next within it. */
  private static final Duration BREATH = Duration.ofSeconds(1);

  /** As many uploads within a breath are a rush, be they short. */
  private static final int RUSH = 20;

  /** A rush that leaves as many processors idle as judging takes is not given way. */
  private static final double IDLE_PROCESSORS = 2;

  private final DoubleSupplier idleProcessors;
  private final Deque<Long> latestBegun = new ArrayDeque<>();
  private int longUnderWay;
  private long lastLongEnd = System.nanoTime() - BREATH.toNanos();

  @Autowired
  IntakeTraffic() {
    this(idleProcessors(ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class)));
  }

  /**
   * Traffic on a machine.
   *
   * @param idleProcessors how many were idle of late; not a number where it is not known
   */
  public IntakeTraffic(DoubleSupplier idleProcessors) {
    this.idleProcessors = idleProcessors;
  }

  private static DoubleSupplier idleProcessors(OperatingSystemMXBean system) {
    return () -> {
      double load = system.getCpuLoad();
      return load < 0 ? Double.NaN : (1 - load) * system.getAvailableProcessors();
    };
  }

  /** Does the work of an upload. */
  <T> T during(boolean isLong, Supplier<T> upload) {
    begin(isLong);
    try {
      return upload.get();
    } finally {
      end(isLong);
    }
  }

  /**
   * Waits until neither a long upload nor a rush of short ones was under way for a second, but not
   * longer than {@code patience}: uploads without end must not hold up the rest for ever. A rush
   * that leaves processors idle holds nothing up.
   *
   * @throws InterruptedException if the waiting thread is to end
   */
  public synchronized void giveWay(Duration patience) throws InterruptedException {
    long began = System.nanoTime();
    for (long now = began; now - began < patience.toNanos(); now = System.nanoTime()) {
      long left = patience.toNanos() - (now - began);
      long breath = longUnderWay > 0 ? left : untilQuiet(now);
      if (breath <= 0) {
        return;
      }
      wait(1 + Duration.ofNanos(Math.min(left, breath)).toMillis());
    }
  }

  /** Nanoseconds from {@code now} until the latest long upload and rush are a breath ago. */
  private long untilQuiet(long now) {
    long busyUntil = lastLongEnd;
    if (latestBegun.size() == RUSH) {
      long rush = latestBegun.getLast() - latestBegun.getFirst();
      boolean isRush = rush < BREATH.toNanos() && latestBegun.getLast() > busyUntil;
      busyUntil = isRush && isBusy() ? latestBegun.getLast() : busyUntil;
    }
    return BREATH.toNanos() - (now - busyUntil);
  }

  private boolean isBusy() {
    return !(idleProcessors.getAsDouble() >= IDLE_PROCESSORS);
  }

  private synchronized void begin(boolean isLong) {
    latestBegun.addLast(System.nanoTime());
    if (latestBegun.size() > RUSH) {
      latestBegun.removeFirst();
    }
    longUnderWay += isLong ? 1 : 0;
  }

  private synchronized void end(boolean isLong) {
    if (isLong) {
      longUnderWay--;
      lastLongEnd = System.nanoTime();
      notifyAll();
    }
  }
}
