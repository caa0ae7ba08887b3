package org.limbspan.rig;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A rig as clients see it. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RigView(
    long id,
    String slug,
    String name,
    double latitudeDeg,
    double longitudeDeg,
    double elevationM,
    String timeZone,
    @Nullable String note,
    Instant createdAt) {

  static RigView of(Rig rig) {
    return new RigView(
        rig.id(),
        rig.slug(),
        rig.name(),
        rig.site().latitudeDeg(),
        rig.site().longitudeDeg(),
        rig.site().elevationM(),
        rig.timeZone().getId(),
        rig.note(),
        rig.createdAt());
  }
}
