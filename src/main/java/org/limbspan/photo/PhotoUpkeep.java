package org.limbspan.photo;

import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.limbspan.platform.AfterCommit;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.rig.SetupOpened;
import org.limbspan.rig.SetupWithdrawn;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Brings readings in line with photographs when nobody sends any: at the start, for what a crash
 * left undone, and when a setup is opened or taken back in the midst of a bracket.
 */
@Component
class PhotoUpkeep {

  private static final Logger LOG = LoggerFactory.getLogger(PhotoUpkeep.class);

  private final PhotoStore store;
  private final BracketBook book;
  private final OriginalFiles originals;
  private final PhotoRemeasuring remeasuring;
  private final Rigs rigs;
  private final Clock clock;
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(task -> new Thread(task, "photo-upkeep"));

  PhotoUpkeep(
      PhotoStore store,
      BracketBook book,
      OriginalFiles originals,
      PhotoRemeasuring remeasuring,
      Rigs rigs,
      Clock clock) {
    this.store = store;
    this.book = book;
    this.originals = originals;
    this.remeasuring = remeasuring;
    this.rigs = rigs;
    this.clock = clock;
  }

  @EventListener(ApplicationReadyEvent.class)
  void start() {
    submit(
        () -> {
          removeLeftovers();
          store.rigsWithPhotos().forEach(this::bringInLine);
        });
  }

  @EventListener
  void on(SetupOpened event) {
    AfterCommit.run(() -> submit(() -> bringInLine(event.rigId())));
  }

  @EventListener
  void on(SetupWithdrawn event) {
    AfterCommit.run(() -> submit(() -> bringInLine(event.rigId())));
  }

  /** Measures a rig's photographs anew that an older method measured; answers how many. */
  int measureAgain(Rig rig) {
    int behind = remeasuring.behind(rig, Darkroom.METHOD);
    submit(() -> remeasuring.measure(rig, Darkroom.METHOD));
    return behind;
  }

  @PreDestroy
  void stop() {
    worker.shutdownNow();
  }

  private void submit(Runnable task) {
    if (!worker.isShutdown()) {
      worker.execute(() -> guarded(task));
    }
  }

  /** What failed is logged and done at the next photograph, change of setup or start. */
  private static void guarded(Runnable task) {
    try {
      task.run();
    } catch (RuntimeException failed) {
      LOG.error("readings could not be brought in line with photographs", failed);
    }
  }

  private void bringInLine(long rigId) {
    book.bringInLine(rigs.find(rigId));
  }

  private void removeLeftovers() {
    try {
      originals.removeLeftovers(clock.instant().minus(1, ChronoUnit.DAYS));
    } catch (IOException e) {
      LOG.warn("leftover files of cut-off uploads could not be removed", e);
    }
  }
}
