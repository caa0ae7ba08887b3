package org.limbspan.demo;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.limbspan.reading.Circumstances;
import org.limbspan.reading.NewReading;
import org.limbspan.rig.NewCalibration;
import org.limbspan.rig.NewRig;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Pass;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * One of two invented observers who agreed on hours at which both photograph the Moon. What goes
 * wrong with a rig is told by its {@link Mishaps}.
 */
final class GardenRig {

  static final Instant FROM = Instant.parse("2024-05-01T12:00:00Z");
  static final Instant TO = Instant.parse("2026-05-01T12:00:00Z");

  private static final int STEP_SECONDS = 600;
  private static final List<Integer> AGREED_HOURS_UTC = List.of(18, 20, 22);
  private static final double LEAST_ALTITUDE_DEG = 8;
  private static final double PAIR_SPAN_DEG = 14;
  private static final double DARK_SUN_ALTITUDE_DEG = -4;
  private static final double LEAST_ILLUMINATED = 0.12;
  private static final int DAYS_BETWEEN_CALIBRATIONS = 43;

  /**
   * What goes wrong.
   *
   * @param nudgedAt when the zoom was touched; the end of all readings if never
   * @param nudgePercent by how much discs are larger from then on
   * @param axisWrongFrom and {@code axisWrongTo}: when upright diameters were logged as horizontal
   * @param wrongCalibration number of the one whose sheet stood at 49 m instead of 50; -1 for none
   */
  record Mishaps(
      Instant nudgedAt,
      double nudgePercent,
      Instant axisWrongFrom,
      Instant axisWrongTo,
      int wrongCalibration) {}

  private final String slug;
  private final String name;
  private final Site site;
  private final ZoneId zone;
  private final Mishaps mishaps;
  private final long seed;

  GardenRig(String slug, String name, Site site, ZoneId zone, Mishaps mishaps, long seed) {
    this.slug = slug;
    this.name = name;
    this.site = site;
    this.zone = zone;
    this.mishaps = mishaps;
    this.seed = seed;
  }

  String slug() {
    return slug;
  }

  Mishaps mishaps() {
    return mishaps;
  }

  NewRig description() {
    return new NewRig(
        slug,
        name,
        site,
        zone,
        "Everything of this rig is invented: place, nights, readings, mistakes and answers.");
  }

  List<NewCalibration> calibrations() {
    RandomGenerator random = new SplittableRandom(seed + 1);
    DemoCamera daylight = camera(random);
    List<NewCalibration> all = new ArrayList<>();
    for (Instant at = FROM.plusSeconds(7200);
        at.isBefore(TO);
        at = at.plusSeconds(86_400L * DAYS_BETWEEN_CALIBRATIONS)) {
      double aboutM = all.size() == mishaps.wrongCalibration() ? 49 : 50;
      all.add(Demo.calibration(new DemoCalibration(at, daylight.sheetPx(at, aboutM))));
    }
    return all;
  }

  private DemoCamera camera(RandomGenerator random) {
    return new DemoCamera(random, mishaps.nudgedAt(), mishaps.nudgePercent());
  }

  List<NewReading> readings(Sky sky) {
    RandomGenerator random = new SplittableRandom(seed);
    DemoWeather weather = new DemoWeather(random);
    DemoCamera camera = camera(random);
    List<NewReading> all = new ArrayList<>();
    for (Pass pass : sky.passes(FROM, TO, site)) {
      boolean clear = weather.nextNightIsClear();
      camera.newNight();
      if (clear) {
        for (MoonSight chosen : chosen(chances(pass, sky))) {
          all.add(reading(chosen, camera, random, weather.describe(), sky));
        }
      }
    }
    return all;
  }

  /** The lowest, the highest, and what was agreed on. */
  private static List<MoonSight> chosen(List<MoonSight> chances) {
    Comparator<MoonSight> byAltitude = Comparator.comparing(MoonSight::altitudeDeg);
    TreeSet<MoonSight> chosen = new TreeSet<>(Comparator.comparing(MoonSight::at));
    Stream.of(chances.stream().min(byAltitude), chances.stream().max(byAltitude))
        .flatMap(Optional::stream)
        .forEach(chosen::add);
    if (chosen.size() == 2
        && Math.abs(chosen.first().altitudeDeg() - chosen.last().altitudeDeg()) < PAIR_SPAN_DEG) {
      chosen.pollFirst();
    }
    chances.stream().filter(GardenRig::isAgreed).forEach(chosen::add);
    return List.copyOf(chosen);
  }

  private static boolean isAgreed(MoonSight sight) {
    long second = Math.floorMod(sight.at().getEpochSecond(), 86_400L);
    return second % 3600 == 0 && AGREED_HOURS_UTC.contains((int) (second / 3600));
  }

  private List<MoonSight> chances(Pass pass, Sky sky) {
    Instant rise = pass.riseAt().orElse(pass.culminationAt().minusSeconds(43_200));
    Instant set = pass.setAt().orElse(pass.culminationAt().plusSeconds(43_200));
    long first = (Math.floorDiv(rise.getEpochSecond(), STEP_SECONDS) + 1L) * STEP_SECONDS;
    return Stream.iterate(
            Instant.ofEpochSecond(first),
            at -> at.isBefore(set) && at.isBefore(TO),
            at -> at.plusSeconds(STEP_SECONDS))
        .filter(this::isUp)
        .map(at -> sky.moonAt(at, site))
        .filter(sight -> sight.apparentAltitudeDeg() > LEAST_ALTITUDE_DEG)
        .filter(sight -> sight.sunAltitudeDeg() < DARK_SUN_ALTITUDE_DEG)
        .filter(sight -> sight.illuminatedFraction() > LEAST_ILLUMINATED)
        .toList();
  }

  private boolean isUp(Instant at) {
    LocalTime local = LocalTime.ofInstant(at, zone);
    return local.getHour() >= 16 || local.getHour() < 2;
  }

  private NewReading reading(
      MoonSight chosen, DemoCamera camera, RandomGenerator random, String skyWords, Sky sky) {
    Instant takenAt = chosen.at().plusSeconds(random.nextInt(240));
    MoonSight sight = sky.moonAt(takenAt, site);
    boolean upright =
        !takenAt.isBefore(mishaps.axisWrongFrom()) && takenAt.isBefore(mishaps.axisWrongTo());
    List<Double> frames =
        camera.bracket(takenAt, sight.diameterArcmin(upright ? Axis.VERTICAL : Axis.HORIZONTAL));
    return new NewReading(
        takenAt,
        Axis.HORIZONTAL,
        Demo.diameter(frames),
        frames,
        new Circumstances(
            Math.round(2 * (sight.apparentAltitudeDeg() + 0.4 * random.nextGaussian())) / 2.0,
            null,
            null,
            100,
            11.0,
            skyWords,
            "invented"),
        OnConflict.REFUSE,
        null);
  }
}
