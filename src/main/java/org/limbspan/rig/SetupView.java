package org.limbspan.rig;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.MeanScale;

/**
 * A setup as clients see it: without {@code startedAt} it is open from the beginning, without
 * {@code endedAt} it lasts.
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record SetupView(
    long id,
    @Nullable Integer number,
    @Nullable Instant startedAt,
    @Nullable Instant endedAt,
    @Nullable String note,
    Entered.@Nullable Outcome outcome,
    @JsonAnyGetter Map<String, Object> plateScale) {

  static SetupView held(Setup setup, Optional<MeanScale> scale) {
    return new SetupView(
        setup.id(),
        setup.number(),
        setup.startedAt().orElse(null),
        setup.endedAt().orElse(null),
        setup.note(),
        null,
        scale.map(PlateScaleFields::of).orElse(Map.of()));
  }

  static SetupView entered(Entered<Setup> entered) {
    Setup setup = entered.fact();
    boolean stands = entered.outcome() != Entered.Outcome.HELD_AS_WITHDRAWN;
    return new SetupView(
        setup.id(),
        stands ? setup.number() : null,
        setup.startedAt().orElse(null),
        setup.endedAt().orElse(null),
        setup.note(),
        entered.outcome(),
        Map.of());
  }
}
