package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.anyLong;
import static org.mockito.Mockito.doAnswer;
import static org.mockito.Mockito.mock;

import java.time.Duration;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.limbspan.reading.IntakeTraffic;

class JudgingQueueTest {

  private static final long HEAVY = 1;
  private static final long LIGHT = 2;
  private static final int LONGEST_SECONDS = 60;

  private final BlockingQueue<Long> begun = new LinkedBlockingQueue<>();
  private final Semaphore heavyMayEnd = new Semaphore(0);
  private final AtomicInteger heavyUnderWay = new AtomicInteger();
  private final AtomicInteger mostHeavyAtOnce = new AtomicInteger();
  private final JudgingRound round = mock(JudgingRound.class);

  @BeforeEach
  void takesLongWhereThereIsMuch() {
    doAnswer(
            call -> {
              long rigId = call.getArgument(0);
              begun.add(rigId);
              if (rigId == HEAVY) {
                mostHeavyAtOnce.accumulateAndGet(heavyUnderWay.incrementAndGet(), Math::max);
                heavyMayEnd.acquire();
                heavyUnderWay.decrementAndGet();
              }
              return null;
            })
        .when(round)
        .judge(anyLong());
  }

  @AfterEach
  void letEnd() {
    heavyMayEnd.release(100);
  }

  @Test
  void judgesAnotherRigBesideOneThatTakesLong() throws InterruptedException {
    JudgingQueue queue =
        new JudgingQueue(round, new IntakeTraffic(() -> 0), Duration.ofMillis(200));
    queue.request(HEAVY);
    assertThat(next()).isEqualTo(HEAVY);
    queue.request(LIGHT);
    assertThat(next()).isEqualTo(LIGHT);
    assertThat(heavyUnderWay).hasValue(1);
    queue.stop();
  }

  @Test
  void judgesOneAfterTheOtherOtherwise() throws InterruptedException {
    JudgingQueue queue = new JudgingQueue(round, new IntakeTraffic(() -> 0), Duration.ofHours(1));
    queue.request(HEAVY);
    assertThat(next()).isEqualTo(HEAVY);
    queue.request(LIGHT);
    assertThat(begun.poll(500, TimeUnit.MILLISECONDS)).isNull();
    heavyMayEnd.release();
    assertThat(next()).isEqualTo(LIGHT);
    queue.stop();
  }

  @Test
  void judgesARigOnceMoreForAllThatArrivedMeanwhileAndNeverTwiceAtOnce()
      throws InterruptedException {
    JudgingQueue queue = new JudgingQueue(round, new IntakeTraffic(() -> 0), Duration.ofMillis(1));
    queue.request(HEAVY);
    assertThat(next()).isEqualTo(HEAVY);
    queue.request(HEAVY);
    queue.request(HEAVY);
    queue.request(LIGHT);
    assertThat(next()).isEqualTo(LIGHT);
    heavyMayEnd.release(3);
    assertThat(next()).isEqualTo(HEAVY);
    queue.request(LIGHT);
    assertThat(next()).isEqualTo(LIGHT);
    assertThat(mostHeavyAtOnce).hasValue(1);
    queue.stop();
  }

  private Long next() throws InterruptedException {
    return begun.poll(LONGEST_SECONDS, TimeUnit.SECONDS);
  }
}
