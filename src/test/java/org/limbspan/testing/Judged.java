package org.limbspan.testing;

import java.time.Duration;
import java.time.Instant;
import tools.jackson.databind.JsonNode;

/** Waits until a rig's judgement reflects its ledger. */
public final class Judged {

  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final long PAUSE_MILLIS = 100;

  private Judged() {}

  /** The body of an answer of the judgement, such as {@code /alerts}, once nothing is pending. */
  public static JsonNode get(RigClient rig, String path) {
    Instant deadline = Instant.now().plus(PATIENCE);
    while (Instant.now().isBefore(deadline)) {
      JsonNode body = rig.get(path).body();
      if (!body.path("pending").asBoolean(true)) {
        return body;
      }
      pause();
    }
    throw new AssertionError(rig.slug() + " was not judged within " + PATIENCE);
  }

  private static void pause() {
    try {
      Thread.sleep(PAUSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError("interrupted", e);
    }
  }
}
