package org.limbspan.reading;

import java.time.Instant;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;
import org.springframework.util.ConcurrentLruCache;

/**
 * Where the Moon stood for the readings that were looked at last: a rig is judged anew with every
 * reading, and all the others were there before. Some 250 bytes a sight, 8 MB at most.
 */
@Component
class SightMemory {

  private static final int MOST = 30_000;

  private final ConcurrentLruCache<Key, MoonSight> sights;

  SightMemory(Sky sky) {
    sights = new ConcurrentLruCache<>(MOST, key -> sky.moonAt(key.instant(), key.site()));
  }

  MoonSight moonAt(Instant instant, Site site) {
    return sights.get(new Key(instant, site));
  }

  private record Key(Instant instant, Site site) {}
}
