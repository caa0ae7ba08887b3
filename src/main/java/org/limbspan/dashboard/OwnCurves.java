package org.limbspan.dashboard;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.OwnCurve;
import org.springframework.stereotype.Component;

/** The curve that each rig's readings alone draw; kept until there are others. */
@Component
class OwnCurves {

  private final Map<String, Kept> kept = new ConcurrentHashMap<>();

  private record Kept(List<Observation> readings, Optional<OwnCurve> curve) {}

  /** Empty where the readings are too few to draw one. */
  Optional<OwnCurve> of(LedgerFacts facts) {
    return kept.compute(
            facts.slug(),
            (slug, before) ->
                before != null && before.readings().equals(facts.observations())
                    ? before
                    : new Kept(
                        facts.observations(),
                        OwnCurve.of(facts.observations(), facts.site(), AltitudeSource.COMPUTED)))
        .curve();
  }
}
