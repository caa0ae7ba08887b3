package org.limbspan.rig;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.Violation;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Component;

/** Enters rigs. */
@Component
class RigWriter {

  private final RigRepository rigs;
  private final SetupRepository setups;
  private final ApplicationEventPublisher events;
  private final Clock clock;

  RigWriter(
      RigRepository rigs, SetupRepository setups, ApplicationEventPublisher events, Clock clock) {
    this.rigs = rigs;
    this.setups = setups;
    this.events = events;
    this.clock = clock;
  }

  /** Enters a rig with its first setup, open from the beginning. */
  Rig describe(NewRig newRig) {
    if (rigs.existsBySlug(newRig.slug())) {
      throw taken(newRig.slug());
    }
    Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    Rig rig = save(newRig, now);
    setups.save(new SetupEntity(rig.id(), null, 1, null, now));
    events.publishEvent(new RigDescribed(rig.id(), rig.slug()));
    return rig;
  }

  private Rig save(NewRig newRig, Instant now) {
    try {
      return rigs.save(new RigEntity(newRig, now)).toRig();
    } catch (DataIntegrityViolationException e) {
      if (String.valueOf(e.getMessage()).contains("rig_slug_key")) {
        throw taken(newRig.slug());
      }
      throw e;
    }
  }

  private static Conflict taken(String slug) {
    return new Conflict(
        "There is a rig '" + slug + "' already.",
        new Violation("slug", slug, "a slug that no other rig has"));
  }
}
