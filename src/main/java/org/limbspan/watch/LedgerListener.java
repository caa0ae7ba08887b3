package org.limbspan.watch;

import org.limbspan.rig.LedgerChange;
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
  void on(LedgerChange change) {
    queue.request(change.rigId());
  }
}
