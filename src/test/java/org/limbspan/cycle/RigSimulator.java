package org.limbspan.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.random.RandomDataGenerator;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

/**
 * Invented rigs under the computed sky: clear and cloudy spells, an observer who sleeps, one low
 * and one high reading of a pass where both can be had, noise of a reading and of a night, slips of
 * 3 to 8 standard deviations, uncertainties stated up to 30 percent wrong.
 */
final class RigSimulator {

  static final double READING_SD = 0.0015 / Math.sqrt(3);
  static final double NIGHT_SD = 0.0004;
  private static final double SLIP_SHARE = 0.02;
  private static final double LEAST_ALTITUDE_DEG = 8;

  private static final List<Site> SITES =
      List.of(
          new Site(52.1, 5.2, 5),
          new Site(37.4, -5.9, 20),
          new Site(-33.9, 18.5, 40),
          new Site(19.4, -99.1, 2240),
          new Site(-0.3, 36.1, 1850),
          new Site(43.1, 141.3, 25),
          new Site(-37.0, 174.9, 15),
          new Site(60.2, 24.9, 30));

  private final RandomDataGenerator random;
  private final Sky sky = SkyFixture.sky();
  private final Site site;

  /** True over stated uncertainty. */
  private final double statedFactor;

  private final Instant start;

  /** Changes the true size of the disc, as a faulty world would; 1 leaves it. */
  interface World {
    double diameterArcmin(MoonSight sight);
  }

  RigSimulator(long seed) {
    random = new RandomDataGenerator(seed);
    site = SITES.get(random.nextInt(0, SITES.size() - 1));
    statedFactor = Math.exp(random.nextUniform(-Math.log(1.3), Math.log(1.3)));
    start =
        Instant.parse("1985-01-01T00:00:00Z")
            .plus(Duration.ofHours(random.nextInt(0, 24 * 365 * 60)));
  }

  Site site() {
    return site;
  }

  Instant start() {
    return start;
  }

  double statedFactor() {
    return statedFactor;
  }

  /** Pairs, about 114 readings a year. */
  List<Observation> pairs(double years) {
    return readings(years, 2, 0.39, sight -> sight.diameterArcmin(Axis.HORIZONTAL));
  }

  /**
   * Readings of {@code years}.
   *
   * @param perPass at most so many of one pass, spread from the lowest to the highest
   * @param diligence share of clear passes that are used
   */
  List<Observation> readings(double years, int perPass, double diligence, World world) {
    List<Observation> all = new ArrayList<>();
    Instant end = start.plus(Duration.ofMinutes(Math.round(years * 365.25 * 1440)));
    List<MoonSight> pass = new ArrayList<>();
    boolean clear = true;
    long number = Long.MIN_VALUE;
    for (Instant at = start; at.isBefore(end); at = at.plus(Duration.ofMinutes(40))) {
      if (!awake(at)) {
        continue;
      }
      MoonSight sight = sky.moonAt(at.plusSeconds(random.nextInt(0, 2000)), site);
      long own = PassNumber.of(sight, site);
      if (own != number) {
        if (clear && random.nextUniform(0, 1) < diligence) {
          all.addAll(night(pass, perPass, world));
        }
        pass.clear();
        clear = random.nextUniform(0, 1) < (clear ? 0.7 : 0.35);
        number = own;
      }
      if (sight.apparentAltitudeDeg() > LEAST_ALTITUDE_DEG && sight.illuminatedFraction() > 0.1) {
        pass.add(sight);
      }
    }
    return all;
  }

  private boolean awake(Instant at) {
    double localHour = (at.getEpochSecond() / 3600.0 + site.longitudeDeg() / 15) % 24;
    return localHour < 1.5 || localHour > 6;
  }

  private List<Observation> night(List<MoonSight> pass, int perPass, World world) {
    List<Observation> readings = new ArrayList<>();
    double night = random.nextNormal(0, NIGHT_SD);
    for (MoonSight sight : chosen(pass, perPass)) {
      readings.add(reading(sight, night, world));
    }
    return readings;
  }

  private static List<MoonSight> chosen(List<MoonSight> pass, int most) {
    List<MoonSight> byAltitude =
        pass.stream().sorted(Comparator.comparingDouble(MoonSight::altitudeDeg)).toList();
    int size = byAltitude.size();
    if (size < 2 || byAltitude.get(size - 1).altitudeDeg() - byAltitude.get(0).altitudeDeg() < 10) {
      return byAltitude.stream().limit(1).toList();
    }
    List<MoonSight> chosen = new ArrayList<>();
    int count = Math.min(most, size);
    for (int k = 0; k < count; k++) {
      chosen.add(byAltitude.get(k * (size - 1) / (count - 1)));
    }
    return chosen;
  }

  private Observation reading(MoonSight sight, double night, World world) {
    double error = random.nextNormal(0, READING_SD);
    if (random.nextUniform(0, 1) < SLIP_SHARE) {
      error = random.nextUniform(3, 8) * READING_SD * (random.nextInt(0, 1) == 0 ? 1 : -1);
    }
    return new Observation(
        sight.at(),
        Axis.HORIZONTAL,
        world.diameterArcmin(sight) * Math.exp(error + night),
        READING_SD / statedFactor,
        sight,
        0,
        Sighted.NONE);
  }
}
