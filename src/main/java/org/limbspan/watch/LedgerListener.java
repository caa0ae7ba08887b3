package org.limbspan.watch;

import org.limbspan.reading.ReadingRelabelled;
import org.limbspan.reading.ReadingWithdrawn;
import org.limbspan.reading.ReadingsRecorded;
import org.limbspan.rig.CalibrationWithdrawn;
import org.limbspan.rig.CalibrationsRecorded;
import org.limbspan.rig.RigDescribed;
import org.limbspan.rig.SetupOpened;
import org.limbspan.rig.SetupWithdrawn;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionalEventListener;

/** Asks for a judgement whenever the ledger of a rig has changed. */
@Component
class LedgerListener {

  private final JudgingQueue queue;

  LedgerListener(JudgingQueue queue) {
    this.queue = queue;
  }

  @TransactionalEventListener
  void on(ReadingsRecorded event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(ReadingWithdrawn event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(ReadingRelabelled event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(AlertAnswered event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(RigDescribed event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(SetupOpened event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(SetupWithdrawn event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(CalibrationsRecorded event) {
    queue.request(event.rigId());
  }

  @TransactionalEventListener
  void on(CalibrationWithdrawn event) {
    queue.request(event.rigId());
  }
}
