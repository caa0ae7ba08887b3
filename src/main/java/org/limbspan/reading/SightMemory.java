package org.limbspan.reading;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/**
 * Where the Moon stood for the readings that were looked at last: a rig is judged anew with every
 * reading, and all the others were there before. Some 250 bytes a sight, 8 MB at most.
 */
@Component
class SightMemory {

  private static final int MOST = 30_000;

  private final Sky sky;
  private final Map<Key, MoonSight> sights =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, MoonSight> eldest) {
          return size() > MOST;
        }
      };

  SightMemory(Sky sky) {
    this.sky = sky;
  }

  MoonSight moonAt(Instant instant, Site site) {
    Key key = new Key(instant, site);
    synchronized (sights) {
      MoonSight known = sights.get(key);
      if (known != null) {
        return known;
      }
    }
    MoonSight sight = sky.moonAt(instant, site);
    synchronized (sights) {
      sights.put(key, sight);
    }
    return sight;
  }

  private record Key(Instant instant, Site site) {}
}
