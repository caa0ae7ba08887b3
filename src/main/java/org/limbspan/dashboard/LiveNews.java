package org.limbspan.dashboard;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.limbspan.platform.AfterCommit;
import org.limbspan.reading.ReadingRelabelled;
import org.limbspan.reading.ReadingWithdrawn;
import org.limbspan.reading.ReadingsRecorded;
import org.limbspan.rig.CalibrationWithdrawn;
import org.limbspan.rig.CalibrationsRecorded;
import org.limbspan.rig.LedgerChange;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.rig.SetupOpened;
import org.limbspan.rig.SetupWithdrawn;
import org.limbspan.watch.AlertAnswered;
import org.limbspan.watch.RigJudged;
import org.limbspan.watch.Watch;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Puts what happens to a ledger into a sentence for its open pages, once it is committed.
 *
 * <p>A plain listener, not one kept in the database: news that nobody was there to read is no news.
 */
@Component
class LiveNews {

  private final LiveReaders readers;
  private final Rigs rigs;
  private final Watch watch;

  LiveNews(LiveReaders readers, Rigs rigs, Watch watch) {
    this.readers = readers;
    this.rigs = rigs;
    this.watch = watch;
  }

  @EventListener
  void on(LedgerChange change) {
    if (readers.areOf(change.rigId())) {
      AfterCommit.run(() -> readers.tell(change.rigId(), "entered", sentence(change)));
    }
  }

  @EventListener
  void on(RigJudged judged) {
    if (readers.areOf(judged.rigId())) {
      AfterCommit.run(() -> readers.run(() -> tellJudgement(judged.rigId())));
    }
  }

  /**
   * New is what was raised by this very judgement; the ledger keeps its time to the microsecond.
   */
  private void tellJudgement(long rigId) {
    Rig rig = rigs.find(rigId);
    Instant judgedAt = watch.judgementInBrief(rig).judgedAt().truncatedTo(ChronoUnit.MILLIS);
    readers.tell(
        rigId,
        "judged",
        watch.alerts(rig).stream()
            .filter(alert -> alert.state().equals("raised"))
            .filter(alert -> !alert.raisedAt().isBefore(judgedAt))
            .findFirst()
            .map(alert -> "A new remark: " + alert.words().what())
            .orElse("Judged anew; no new remark."));
  }

  private static String sentence(LedgerChange change) {
    if (change instanceof ReadingsRecorded) {
      return "New readings were entered.";
    }
    if (change instanceof ReadingWithdrawn || change instanceof ReadingRelabelled) {
      return "Readings were put right.";
    }
    if (change instanceof CalibrationsRecorded) {
      return "A calibration was entered.";
    }
    if (change instanceof CalibrationWithdrawn) {
      return "A calibration was taken back.";
    }
    if (change instanceof SetupOpened || change instanceof SetupWithdrawn) {
      return "The setups have changed.";
    }
    return change instanceof AlertAnswered ? "A remark was answered." : "The ledger has changed.";
  }
}
