package org.limbspan.photo;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import java.util.List;
import org.springframework.stereotype.Component;

/** Counts since the start of the service; photographs that were only tried count too. */
@Component
class PhotoMeters {

  private final MeterRegistry registry;
  private final Counter measured;

  PhotoMeters(MeterRegistry registry) {
    this.registry = registry;
    this.measured =
        Counter.builder("limbspan.photographs.measured")
            .description("Photographs of the Moon that gave diameters")
            .register(registry);
  }

  /** Counts what became of photographs; the words of the refusals are few and the code's own. */
  void took(List<PhotoAnswer> answers) {
    for (PhotoAnswer answer : answers) {
      PhotoAnswer.Refusal refused = answer.refused();
      if (refused == null) {
        measured.increment();
      } else {
        Counter.builder("limbspan.photographs.refused")
            .description("Photographs of the Moon that gave none, by the reason")
            .tag("reason", refused.code())
            .register(registry)
            .increment();
      }
    }
  }
}
