package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.limbspan.platform.Unavailable;
import org.springframework.context.SmartLifecycle;

class LiveReadersTest {

  private final LiveReaders readers = new LiveReaders();

  @BeforeEach
  void start() {
    readers.start();
  }

  @AfterEach
  void stop() {
    readers.stop();
  }

  @Test
  void takesAsManyPagesAsItCanTellAndNoMore() {
    for (int i = 0; i < LiveReaders.MOST; i++) {
      readers.join(7);
    }
    assertThat(readers.count()).isEqualTo(LiveReaders.MOST);
    assertThatExceptionOfType(Unavailable.class)
        .isThrownBy(() -> readers.join(7))
        .withMessageContaining("64");
  }

  @Test
  void knowsOfWhichRigsPagesAreOpen() {
    readers.join(7);
    assertThat(readers.areOf(7)).isTrue();
    assertThat(readers.areOf(8)).isFalse();
  }

  @Test
  void takesNobodyAfterItsEndAndSwallowsLateNews() {
    readers.stop();
    assertThat(readers.isRunning()).isFalse();
    assertThatExceptionOfType(Unavailable.class).isThrownBy(() -> readers.join(7));
    readers.tell(7, "entered", "New readings were entered.");
  }

  @Test
  void endsBeforeTheWebServerWaitsForItsRequests() {
    assertThat(readers.getPhase()).isEqualTo(SmartLifecycle.DEFAULT_PHASE);
  }
}
