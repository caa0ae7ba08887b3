package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * When an invented observer photographs the Moon: in clear nights a low and a high reading of one
 * pass, some 57 nights a year; or every hour of a pass. Clouds come in spells.
 *
 * @param sights the Moon at each reading, oldest first
 */
record Schedule(Site site, List<MoonSight> sights) {

  private static final Duration STEP = Duration.ofMinutes(40);
  private static final int STEPS_PER_NIGHT = 22;
  private static final double LOWEST_DEG = 9;
  private static final double SPELL = 0.75;

  enum Cadence {
    PAIRS,
    HOURLY
  }

  static Schedule of(Sky sky, Cadence cadence, double years, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double latitudeDeg = random.nextDouble(-55, 60);
    double longitudeDeg = random.nextDouble(-180, 180);
    Site site = new Site(latitudeDeg, longitudeDeg, random.nextDouble(0, 1500));
    Instant noon =
        Instant.parse("2005-01-01T12:00:00Z")
            .plusSeconds((long) (-240 * longitudeDeg))
            .plus(Duration.ofDays(random.nextInt(9000)));
    List<MoonSight> sights = new ArrayList<>();
    boolean clear = true;
    for (int night = 0; night < 365.25 * years; night++) {
      clear = random.nextDouble() < SPELL ? clear : random.nextDouble() < 0.55;
      if (clear && random.nextDouble() < 0.415) {
        Instant evening = noon.plus(Duration.ofDays(night)).plus(Duration.ofHours(5));
        List<MoonSight> pass = pass(sky, site, evening.plusSeconds(random.nextInt(2400)));
        if (pass.size() > 3) {
          sights.addAll(cadence == Cadence.PAIRS ? pair(pass) : pass);
        }
      }
    }
    return new Schedule(site, List.copyOf(sights));
  }

  private static List<MoonSight> pass(Sky sky, Site site, Instant evening) {
    List<MoonSight> pass = new ArrayList<>();
    for (int i = 0; i < STEPS_PER_NIGHT; i++) {
      MoonSight sight = sky.moonAt(evening.plus(STEP.multipliedBy(i)), site);
      if (sight.apparentAltitudeDeg() > LOWEST_DEG && sight.sunAltitudeDeg() < -3) {
        pass.add(sight);
      }
    }
    return pass;
  }

  private static List<MoonSight> pair(List<MoonSight> pass) {
    Comparator<MoonSight> byAltitude = Comparator.comparingDouble(MoonSight::altitudeDeg);
    MoonSight low = pass.stream().min(byAltitude).orElseThrow();
    MoonSight high = pass.stream().max(byAltitude).orElseThrow();
    return low.at().isBefore(high.at()) ? List.of(low, high) : List.of(high, low);
  }
}
