package org.limbspan.rig;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindows;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** What lies ahead of a place for 60 days, computed once for each full hour. */
@Component
public class Outlooks {

  private static final Duration AHEAD = Duration.ofDays(60);
  private static final Duration BACK = Duration.ofDays(1);
  private static final int MOST_KEPT = 100;

  private final Sky sky;
  private final Map<Place, Kept> kept = new ConcurrentHashMap<>();

  public Outlooks(Sky sky) {
    this.sky = sky;
  }

  /** A site with the horizon that is known of it. */
  private record Place(Site site, Optional<HorizonLine> line) {}

  private record Kept(Instant hour, Outlook outlook) {}

  /** From an instant on; empty where the ephemeris does not reach that far. */
  public Optional<Outlook> of(Site site, Optional<HorizonLine> line, Instant now) {
    Instant hour = now.truncatedTo(ChronoUnit.HOURS);
    if (hour.minus(BACK).isBefore(sky.ephemerisFrom())
        || now.plus(AHEAD).plus(BACK).isAfter(sky.ephemerisTo())) {
      return Optional.empty();
    }
    return Optional.of(ofHour(new Place(site, line), hour).after(now));
  }

  private Outlook ofHour(Place place, Instant hour) {
    Kept before = kept.get(place);
    if (before != null && before.hour().equals(hour)) {
      return before.outlook();
    }
    Outlook outlook = new Outlook(plans(place, hour), sky.apsides(hour, hour.plus(AHEAD)));
    if (kept.size() >= MOST_KEPT) {
      kept.clear();
    }
    kept.put(place, new Kept(hour, outlook));
    return outlook;
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
