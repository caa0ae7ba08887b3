package org.limbspan.platform;

import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Does things once the transaction at hand has come to stand; nothing if it is rolled back. What is
 * done then must be quick and, wherever many may do it at once, ask for no connection: the
 * transaction's own is still held, and a service whose every connection waits for another one
 * stands still.
 */
public final class AfterCommit {

  private AfterCommit() {}

  /** Runs the task after the transaction at hand, or at once where there is none. */
  public static void run(Runnable task) {
    if (!TransactionSynchronizationManager.isSynchronizationActive()) {
      task.run();
      return;
    }
    TransactionSynchronizationManager.registerSynchronization(
        new TransactionSynchronization() {
          @Override
          public void afterCommit() {
            task.run();
          }
        });
  }
}
