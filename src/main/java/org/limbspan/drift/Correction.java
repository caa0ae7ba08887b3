package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.limbspan.sky.Site;

/**
 * One way in which the logged instants, or the site, may be wrong, and how to put it right.
 *
 * @param name tells corrections apart
 * @param share how likely this one is among all corrections
 * @param site where the rig then stands
 * @param trueInstant the true instant for a logged one
 */
record Correction(
    String name, Cause cause, double share, Site site, UnaryOperator<Instant> trueInstant) {

  private static final int MOST_HALF_HOURS = 28;

  /** Everything that is tried for a rig; the shares sum to 1 or a little less. */
  static List<Correction> of(Site site, ZoneId zone) {
    List<Correction> all = new ArrayList<>();
    all.add(
        new Correction(
            "local time", Cause.LOCAL_TIME_AS_UTC, 0.5, site, at -> shifted(at, zone, -1)));
    all.add(
        new Correction("zone twice", Cause.CLOCK_WRONG, 0.05, site, at -> shifted(at, zone, -2)));
    all.add(
        new Correction("zone added", Cause.CLOCK_WRONG, 0.05, site, at -> shifted(at, zone, 1)));
    for (int halfHours = -MOST_HALF_HOURS; halfHours <= MOST_HALF_HOURS; halfHours++) {
      if (halfHours != 0) {
        all.add(offset(site, Duration.ofHours(halfHours).dividedBy(2), share(halfHours)));
      }
    }
    all.add(offset(site, Duration.ofDays(-1), 0.02));
    all.add(offset(site, Duration.ofDays(1), 0.02));
    Site mirrored = new Site(site.latitudeDeg(), -site.longitudeDeg(), site.elevationM());
    all.add(
        new Correction(
            "longitude", Cause.LONGITUDE_WRONG, 0.05, mirrored, UnaryOperator.identity()));
    return List.copyOf(all);
  }

  private static double share(int halfHours) {
    int minutes = 30 * Math.abs(halfHours);
    return minutes == 60 || minutes == 720 ? 0.03 : 0.003;
  }

  /** A clock that is ahead by a constant amount. */
  static Correction offset(Site site, Duration ahead, double share) {
    return new Correction(ahead.toString(), Cause.CLOCK_WRONG, share, site, at -> at.minus(ahead));
  }

  /** Local time is logged: the zone's offset at that local time, so and so many times. */
  private static Instant shifted(Instant logged, ZoneId zone, int times) {
    ZoneOffset offset = logged.atOffset(ZoneOffset.UTC).toLocalDateTime().atZone(zone).getOffset();
    return logged.plusSeconds((long) times * offset.getTotalSeconds());
  }
}
