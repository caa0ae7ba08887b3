package org.limbspan.rig;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindows;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;
import org.springframework.util.ConcurrentLruCache;

/** What lies ahead of a place for 60 days, computed once for each full hour. */
@Component
public class Outlooks {

  private static final Duration AHEAD = Duration.ofDays(60);
  private static final Duration BACK = Duration.ofDays(1);
  private static final int MOST_KEPT = 100;

  private final Sky sky;
  private final ConcurrentLruCache<Key, Outlook> kept =
      new ConcurrentLruCache<>(MOST_KEPT, key -> compute(key.place(), key.hour()));

  public Outlooks(Sky sky) {
    this.sky = sky;
  }

  /** A site with the horizon that is known of it. */
  private record Place(Site site, Optional<HorizonLine> line) {}

  private record Key(Place place, Instant hour) {}

  /** From an instant on; empty where the ephemeris does not reach that far. */
  public Optional<Outlook> of(Site site, Optional<HorizonLine> line, Instant now) {
    Instant hour = now.truncatedTo(ChronoUnit.HOURS);
    if (hour.minus(BACK).isBefore(sky.ephemerisFrom())
        || now.plus(AHEAD).plus(BACK).isAfter(sky.ephemerisTo())) {
      return Optional.empty();
    }
    return Optional.of(kept.get(new Key(new Place(site, line), hour)).after(now));
  }

  private Outlook compute(Place place, Instant hour) {
    return new Outlook(plans(place, hour), sky.apsides(hour, hour.plus(AHEAD)));
  }

  /** What the passes that are not over by then offer. */
  private List<ShootingPlan> plans(Place place, Instant from) {
    ShootingWindows windows = ShootingWindows.of(sky, place.site(), place.line());
    return sky.passes(from.minus(BACK), from.plus(AHEAD), place.site()).stream()
        .filter(pass -> pass.endAt().isAfter(from))
        .map(windows::plan)
        .toList();
  }
}
