package org.limbspan.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.BufferedReader;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

class ServingProcessTest {

  @Test
  void livesUntilItsProcessEnds() throws Exception {
    Process process = new ProcessBuilder("sleep", "60").start();
    try {
      ServingProcess serving = ServingProcess.of(process.toHandle());
      assertThat(serving.lives()).isTrue();

      process.destroyForcibly().waitFor();

      assertThat(serving.lives()).isFalse();
    } finally {
      process.destroyForcibly();
    }
  }

  /** As in a container whose first process collects no children: the process stays listed. */
  @Test
  @EnabledOnOs(
      value = OS.LINUX,
      disabledReason = "misses that an ended process which nobody collects counts as ended")
  void isEndedWhenNobodyCollectsTheProcess() throws Exception {
    Process parent = new ProcessBuilder("sh", "-c", "sleep 60 & echo $!; exec sleep 60").start();
    try (BufferedReader words = parent.inputReader()) {
      ProcessHandle child = ProcessHandle.of(Long.parseLong(words.readLine())).orElseThrow();
      ServingProcess serving = ServingProcess.of(child);
      assertThat(serving.lives()).isTrue();
      // until then the parent is a shell, which may collect the child
      await().until(() -> parent.info().command().orElse("").endsWith("sleep"));

      child.destroyForcibly();

      await()
          .atMost(30, TimeUnit.SECONDS)
          .untilAsserted(() -> assertThat(serving.lives()).isFalse());
      assertThat(child.isAlive()).as("still listed by the system").isTrue();
    } finally {
      parent.destroyForcibly();
    }
  }
}
