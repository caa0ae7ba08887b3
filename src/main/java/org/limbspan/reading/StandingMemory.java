package org.limbspan.reading;

import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.sky.Sky;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.util.ConcurrentLruCache;

/**
 * What stands of the rigs that were judged last: of ten years of readings only those that were
 * added since are read. Some 10 MB for 15,000 readings.
 *
 * <p>It is not believed blindly. Each time the rows known are counted as this transaction sees
 * them; if they are not as many as they were (another snapshot, a database put back), and every
 * {@value #TRUSTED} times in any case, all is read anew.
 */
@Component
class StandingMemory {

  private static final Logger LOG = LoggerFactory.getLogger(StandingMemory.class);
  private static final int MOST = 16;

  /** So many times in a row what is known is gone on with. */
  static final int TRUSTED = 64;

  private final ReadingStore store;
  private final Sky sky;
  private final ConcurrentLruCache<Long, OfRig> rigs =
      new ConcurrentLruCache<>(MOST, rigId -> new OfRig());

  StandingMemory(ReadingStore store, Sky sky) {
    this.store = store;
    this.sky = sky;
  }

  /** What is known of one rig. */
  private static final class OfRig {
    private @Nullable StandingReadings known;
    private int used;
  }

  /** All that stand, as angles, oldest first; within a transaction. */
  List<StandardisedReading> standardised(InstrumentHistory history) {
    return with(
        history.rig().id(),
        standing -> standing.standardised(history, new Standardiser(history, sky::moonAt)));
  }

  /** Those with {@code from <= takenAt < to}, as entered; within a transaction. */
  List<RecordedReading> between(long rigId, Instant from, Instant to) {
    return with(rigId, standing -> standing.between(from, to));
  }

  private <T> T with(long rigId, Function<StandingReadings, T> use) {
    OfRig rig = rigs.get(rigId);
    synchronized (rig) {
      StandingReadings standing = upToDate(rigId, rig);
      rig.known = standing;
      return use.apply(standing);
    }
  }

  private StandingReadings upToDate(long rigId, OfRig rig) {
    StandingReadings known = rig.known;
    if (known == null || !goesOn(rigId, known)) {
      rig.used = 0;
      return all(rigId);
    }
    if (++rig.used < TRUSTED) {
      return known;
    }
    rig.used = 0;
    StandingReadings anew = all(rigId);
    if (anew.rows().equals(known.rows()) && !anew.readings().equals(known.readings())) {
      LOG.error("rig {}: readings kept in memory were not those of the database", rigId);
      return anew;
    }
    return anew.rows().equals(known.rows()) ? known : anew;
  }

  private boolean goesOn(long rigId, StandingReadings known) {
    if (store.countUpTo(rigId, known.rows().lastId()) != known.rows().count()) {
      return false;
    }
    for (Version row : store.after(rigId, known.rows().lastId())) {
      if (!known.take(row)) {
        return false;
      }
    }
    return true;
  }

  private StandingReadings all(long rigId) {
    RowCount rows = store.rows(rigId);
    try (Stream<RecordedReading> standing = store.stream(rigId, ReadingSpan.ALL)) {
      return new StandingReadings(rows, standing.toList());
    }
  }
}
