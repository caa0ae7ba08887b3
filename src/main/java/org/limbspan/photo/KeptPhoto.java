package org.limbspan.photo;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A photograph with all that was made of it.
 *
 * @param measurements by method, the newest first
 * @param isOriginalHeld whether its file is here; a ledger may have come without
 * @param readingId the reading that it was or is part of; null if not asked for or none
 */
public record KeptPhoto(
    Photograph photo,
    List<MeasuredByMethod> measurements,
    boolean isOriginalHeld,
    @Nullable Long readingId,
    PhotoAnswer.@Nullable Use use) {

  public KeptPhoto {
    measurements = List.copyOf(measurements);
  }

  /** Figures of the newest method; empty if that one refused it. */
  public Optional<DiscFigures> newest() {
    return measurements.isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(measurements.get(0).figures());
  }
}
