package org.limbspan.platform;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Shows the reason and the remedy in place of a stack trace. */
class StartRefusedAnalyzer extends AbstractFailureAnalyzer<StartRefused> {

  @Override
  protected FailureAnalysis analyze(Throwable rootFailure, StartRefused cause) {
    return new FailureAnalysis(String.valueOf(cause.getMessage()), cause.remedy(), cause);
  }
}
