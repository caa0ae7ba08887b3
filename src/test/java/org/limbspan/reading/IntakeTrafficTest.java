package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class IntakeTrafficTest {

  private double idle;
  private final IntakeTraffic traffic = new IntakeTraffic(() -> idle);
  private final CountDownLatch end = new CountDownLatch(1);
  private final AtomicBoolean gone = new AtomicBoolean();

  private void begin() {
    Thread upload =
        new Thread(
            () ->
                traffic.during(
                    true,
                    () -> {
                      try {
                        return end.await(1, TimeUnit.MINUTES);
                      } catch (InterruptedException e) {
                        throw new IllegalStateException(e);
                      }
                    }));
    upload.start();
    await().until(() -> upload.getState() == Thread.State.TIMED_WAITING);
  }

  private Thread giveWay(Duration patience) {
    Thread waiter =
        new Thread(
            () -> {
              try {
                traffic.giveWay(patience);
                gone.set(true);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    waiter.start();
    return waiter;
  }

  @Test
  void holdsNothingUpWhereThereIsNone() throws InterruptedException {
    traffic.giveWay(Duration.ofDays(1));
  }

  @Test
  void isGivenWayWhileAnUploadIsLong() throws InterruptedException {
    begin();
    Thread waiter = giveWay(Duration.ofMinutes(1));
    await().until(() -> waiter.getState() == Thread.State.TIMED_WAITING);
    assertThat(gone).isFalse();
    end.countDown();
    waiter.join(TimeUnit.SECONDS.toMillis(30));
    assertThat(gone).isTrue();
  }

  @Test
  void isNotGivenWayForEver() throws InterruptedException {
    begin();
    giveWay(Duration.ofMillis(50)).join(TimeUnit.SECONDS.toMillis(30));
    assertThat(gone).isTrue();
    end.countDown();
  }

  @Test
  void isGivenWayInARushOfShortOnes() throws InterruptedException {
    for (int i = 0; i < 19; i++) {
      traffic.during(false, () -> true);
    }
    traffic.giveWay(Duration.ofDays(1));
    long began = System.nanoTime();
    for (int i = 0; i < 20; i++) {
      traffic.during(false, () -> true);
    }
    traffic.giveWay(Duration.ofDays(1));
    assertThat(System.nanoTime() - began).isGreaterThan(900_000_000L);
  }

  @Test
  void isNotGivenWayWhereARushLeavesProcessorsIdle() throws InterruptedException {
    idle = 2.5;
    for (int i = 0; i < 20; i++) {
      traffic.during(false, () -> true);
    }
    Thread waiter = giveWay(Duration.ofDays(1));
    waiter.join(TimeUnit.SECONDS.toMillis(30));
    assertThat(gone).isTrue();
    assertThat(busyLater()).isTrue();
  }

  /** That the rush of the test before was one: on a busy machine it is waited for. */
  private boolean busyLater() throws InterruptedException {
    idle = Double.NaN;
    long began = System.nanoTime();
    for (int i = 0; i < 20; i++) {
      traffic.during(false, () -> true);
    }
    traffic.giveWay(Duration.ofDays(1));
    return System.nanoTime() - began > 900_000_000L;
  }
}
