package org.limbspan.platform;

import org.apache.coyote.Processor;
import org.apache.coyote.http11.Http11NioProtocol;

/**
 * Serves HTTP like its parent but sleeps while nobody asks. What arrives wakes it at once; who
 * sends nothing is noticed a few seconds later, and the clock of long answers (a page that waits
 * for news) ticks each second only while there are such answers.
 */
public final class SleepingConnector extends Http11NioProtocol {

  private static final long LONGEST_SLEEP_MS = 5000;

  /** Made by the web server, by its name. */
  public SleepingConnector() {
    setSelectorTimeout(LONGEST_SLEEP_MS);
  }

  @Override
  public synchronized void addWaitingProcessor(Processor processor) {
    super.addWaitingProcessor(processor);
    super.startAsyncTimeout();
  }

  /** Asked for at the start and looked after each minute. */
  @Override
  protected synchronized void startAsyncTimeout() {
    if (getWaitingProcessorCount() > 0) {
      super.startAsyncTimeout();
    } else {
      super.stopAsyncTimeout();
    }
  }

  @Override
  protected synchronized void stopAsyncTimeout() {
    super.stopAsyncTimeout();
  }
}
