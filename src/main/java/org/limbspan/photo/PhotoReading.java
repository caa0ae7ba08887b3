package org.limbspan.photo;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Axis;

/**
 * A reading that photographs make.
 *
 * @param readingId of the ledger's reading; null until it is entered
 */
record PhotoReading(
    long id,
    Instant takenAt,
    Axis axis,
    double diameterPx,
    double uncertaintyPx,
    List<Long> photoIds,
    List<Long> setAsideIds,
    List<String> remarks,
    @Nullable Long readingId) {

  PhotoReading {
    photoIds = List.copyOf(photoIds);
    setAsideIds = List.copyOf(setAsideIds);
    remarks = List.copyOf(remarks);
  }

  boolean holds(long photoId) {
    return photoIds.contains(photoId) || setAsideIds.contains(photoId);
  }

  /** The same in all that the ledger gets and of the same photographs. */
  boolean equalsIn(PlannedReading planned) {
    return takenAt.equals(planned.takenAt())
        && axis == planned.axis()
        && diameterPx == planned.combined().diameterPx()
        && uncertaintyPx == planned.combined().uncertaintyPx()
        && photoIds.equals(planned.photoIds())
        && setAsideIds.equals(planned.setAsideIds());
  }

  boolean sharesPlaceWith(PlannedReading planned) {
    return takenAt.equals(planned.takenAt()) && axis == planned.axis();
  }
}
