package org.limbspan.reading;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import org.springframework.stereotype.Component;

/** Counts since the start of the service. */
@Component
class ReadingMeters {

  private final Counter recorded;
  private final Counter refused;

  ReadingMeters(MeterRegistry registry) {
    recorded =
        Counter.builder("limbspan.readings.recorded")
            .description("Readings that were entered, corrections among them")
            .register(registry);
    refused =
        Counter.builder("limbspan.reading.entries.refused")
            .description("Entries of readings that could not be taken")
            .register(registry);
  }

  void recorded(int readings) {
    recorded.increment(readings);
  }

  void refused(int entries) {
    refused.increment(entries);
  }
}
