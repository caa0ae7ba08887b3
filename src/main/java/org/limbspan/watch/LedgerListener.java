package org.limbspan.watch;

import org.limbspan.platform.AfterCommit;
import org.limbspan.rig.LedgerChange;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Asks for a judgement whenever the ledger of a rig has changed. It need not be kept until done: a
 * judgement behind its ledger is found by the next round of the queue.
 */
@Component
class LedgerListener {

  private final JudgingQueue queue;

  LedgerListener(JudgingQueue queue) {
    this.queue = queue;
  }

  @EventListener
  void on(LedgerChange change) {
    AfterCommit.run(() -> queue.request(change.rigId()));
  }
}
