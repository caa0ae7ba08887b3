package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class LongUploadsTest {

  private final LongUploads uploads = new LongUploads();
  private final CountDownLatch end = new CountDownLatch(1);
  private final AtomicBoolean gone = new AtomicBoolean();

  private void begin() {
    Thread upload =
        new Thread(
            () ->
                uploads.during(
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
                uploads.giveWay(patience);
                gone.set(true);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    waiter.start();
    return waiter;
  }

  @Test
  void holdNothingUpWhereThereAreNone() throws InterruptedException {
    uploads.giveWay(Duration.ofDays(1));
  }

  @Test
  void areGivenWayUntilTheyHaveEnded() throws InterruptedException {
    begin();
    Thread waiter = giveWay(Duration.ofMinutes(1));
    await().until(() -> waiter.getState() == Thread.State.TIMED_WAITING);
    assertThat(gone).isFalse();
    end.countDown();
    waiter.join(TimeUnit.SECONDS.toMillis(30));
    assertThat(gone).isTrue();
  }

  @Test
  void areNotGivenWayForEver() throws InterruptedException {
    begin();
    giveWay(Duration.ofMillis(50)).join(TimeUnit.SECONDS.toMillis(30));
    assertThat(gone).isTrue();
    end.countDown();
  }
}
