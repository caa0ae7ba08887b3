package org.limbspan.watch;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.MeterBinder;
import org.springframework.stereotype.Component;

/** How many rigs have a judgement behind their ledger, asked when somebody looks. */
@Component
class JudgingLagMeter implements MeterBinder {

  private final JudgingRound round;

  JudgingLagMeter(JudgingRound round) {
    this.round = round;
  }

  @Override
  public void bindTo(MeterRegistry registry) {
    Gauge.builder("limbspan.judging.behind.rigs", round, its -> its.behind().size())
        .description("Rigs whose judgement is missing or behind their ledger")
        .register(registry);
  }
}
