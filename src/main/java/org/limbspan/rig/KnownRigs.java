package org.limbspan.rig;

import org.limbspan.platform.NotFound;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.util.ConcurrentLruCache;

/**
 * The rigs asked for last, by their slugs: every request names one, and what is held of a rig
 * itself never changes. Within a transaction that writes nothing is remembered, since the rig may
 * be that transaction's own and be gone with it.
 */
@Component
class KnownRigs {

  private static final int MOST = 4096;

  private final RigRepository rigs;
  private final ConcurrentLruCache<String, Rig> known =
      new ConcurrentLruCache<>(MOST, this::inDatabase);

  KnownRigs(RigRepository rigs) {
    this.rigs = rigs;
  }

  /**
   * The rig of that slug.
   *
   * @throws NotFound if there is none
   */
  Rig find(String slug) {
    return isWriting() ? inDatabase(slug) : known.get(slug);
  }

  private static boolean isWriting() {
    return TransactionSynchronizationManager.isActualTransactionActive()
        && !TransactionSynchronizationManager.isCurrentTransactionReadOnly();
  }

  private Rig inDatabase(String slug) {
    return rigs.findBySlug(slug)
        .map(RigEntity::toRig)
        .orElseThrow(() -> new NotFound("rig", "slug", slug));
  }
}
