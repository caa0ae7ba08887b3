package org.limbspan.photo;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.limbspan.platform.NotFound;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Writes photographs and measurements; every method is one transaction, one at a time for a rig.
 */
@Component
class PhotoWriter {

  private final PhotoStore store;
  private final RefusalStore refusals;
  private final Rigs rigs;
  private final Clock clock;

  PhotoWriter(PhotoStore store, RefusalStore refusals, Rigs rigs, Clock clock) {
    this.store = store;
    this.refusals = refusals;
    this.rigs = rigs;
    this.clock = clock;
  }

  /** Enters photographs; one that is held stands as it is unless it is to be superseded. */
  @Transactional
  List<Long> enter(Rig rig, List<NewPhoto> photos, OnConflict onConflict) {
    rigs.lock(rig.id());
    List<Long> ids = new ArrayList<>();
    for (NewPhoto photo : photos) {
      ids.add(enter(rig, photo, onConflict));
    }
    return ids;
  }

  /**
   * Writes down why files were refused.
   *
   * @param answers of refused files, by the hash of each
   */
  @Transactional
  void refuse(Rig rig, Map<String, PhotoAnswer> answers) {
    rigs.lock(rig.id());
    answers.forEach(
        (sha256, answer) ->
            refusals.tell(
                rig.id(),
                sha256,
                new RefusedFile(
                    answer.file(),
                    answer.takenAt(),
                    Objects.requireNonNull(answer.refused()),
                    now())));
    refusals.forgetOldest(rig.id());
  }

  /** Takes a photograph back; once is enough. */
  @Transactional
  void withdraw(Rig rig, long photoId, String reason) {
    rigs.lock(rig.id());
    if (store.byIds(rig.id(), List.of(photoId)).isEmpty()) {
      throw new NotFound("photograph", "id", photoId);
    }
    store.withdraw(photoId, reason, now());
  }

  /** Adds what a newer method made of a photograph. */
  @Transactional
  void add(Rig rig, long photoId, MeasuredByMethod measured) {
    rigs.lock(rig.id());
    store.insert(photoId, measured);
  }

  private long enter(Rig rig, NewPhoto photo, OnConflict onConflict) {
    Optional<PhotoStore.Held> held = store.newest(rig.id(), photo.sha256());
    if (held.isPresent() && onConflict == OnConflict.REFUSE) {
      return held.get().photo().id();
    }
    held.filter(each -> !each.withdrawn())
        .ifPresent(each -> store.withdraw(each.photo().id(), "superseded", now()));
    int version = held.map(each -> each.photo().version() + 1).orElse(1);
    long id = store.insert(rig.id(), photo, version, now());
    store.insert(id, new MeasuredByMethod(Darkroom.METHOD, now(), photo.figures(), null));
    return id;
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }
}
