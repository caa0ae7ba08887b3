package org.limbspan.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Pass;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * Fourteen invented months of an invented rig: an observer who is up from afternoon to half past
 * one, takes a low and a high reading of a pass where the sky lets them, and sleeps otherwise.
 */
final class DemoScenario {

  static final String SLUG = "invented-garden";
  static final String NAME = "Garden pillar (invented)";
  static final String NOTE =
      "Everything of this rig is invented: place, nights, readings and the nudge of its zoom.";
  static final Site SITE = new Site(46.62, 7.15, 720);
  static final ZoneId ZONE = ZoneId.of("Europe/Zurich");

  private static final Instant FROM = Instant.parse("2025-05-10T12:00:00Z");
  private static final Instant TO = Instant.parse("2026-07-12T12:00:00Z");
  private static final Duration STEP = Duration.ofMinutes(4);
  private static final LocalTime UP_FROM = LocalTime.of(16, 0);
  private static final LocalTime UP_TO = LocalTime.of(1, 30);
  private static final double LEAST_ALTITUDE_DEG = 8;
  private static final double PAIR_SPAN_DEG = 14;
  private static final double DARK_SUN_ALTITUDE_DEG = -4;
  private static final double LEAST_ILLUMINATED = 0.12;
  private static final int DAYS_BETWEEN_CALIBRATIONS = 47;

  private final Sky sky;
  private final RandomGenerator random = new SplittableRandom(20_250_510);
  private final DemoWeather weather = new DemoWeather(random);
  private final DemoCamera camera = new DemoCamera(random);

  DemoScenario(Sky sky) {
    this.sky = sky;
  }

  List<DemoCalibration> calibrations() {
    RandomGenerator own = new SplittableRandom(7);
    DemoCamera daylight = new DemoCamera(own);
    return Stream.iterate(
            FROM, at -> at.isBefore(TO), at -> at.plus(Duration.ofDays(DAYS_BETWEEN_CALIBRATIONS)))
        .map(at -> at.plus(Duration.ofMinutes(own.nextInt(240))))
        .map(at -> new DemoCalibration(at, daylight.sheetPx(at)))
        .toList();
  }

  List<DemoReading> readings() {
    List<DemoReading> readings = new ArrayList<>();
    for (Pass pass : sky.passes(FROM, TO, SITE)) {
      boolean clear = weather.nextNightIsClear();
      camera.newNight();
      if (clear) {
        readings.addAll(readingsOf(pass));
      }
    }
    return readings;
  }

  private List<DemoReading> readingsOf(Pass pass) {
    List<MoonSight> chances = chancesOf(pass);
    Optional<MoonSight> high = chances.stream().max(Comparator.comparing(MoonSight::altitudeDeg));
    Optional<MoonSight> low = chances.stream().min(Comparator.comparing(MoonSight::altitudeDeg));
    if (high.isEmpty() || low.isEmpty()) {
      return List.of();
    }
    boolean pair = high.get().altitudeDeg() - low.get().altitudeDeg() > PAIR_SPAN_DEG;
    return Stream.concat(pair ? low.stream() : Stream.empty(), high.stream())
        .sorted(Comparator.comparing(MoonSight::at))
        .map(this::photograph)
        .toList();
  }

  private List<MoonSight> chancesOf(Pass pass) {
    Instant rise = pass.riseAt().orElse(pass.culminationAt().minus(Duration.ofHours(12)));
    Instant set = pass.setAt().orElse(pass.culminationAt().plus(Duration.ofHours(12)));
    return Stream.iterate(rise, at -> at.isBefore(set), at -> at.plus(STEP))
        .filter(DemoScenario::isUp)
        .map(at -> sky.moonAt(at, SITE))
        .filter(sight -> sight.apparentAltitudeDeg() > LEAST_ALTITUDE_DEG)
        .filter(sight -> sight.sunAltitudeDeg() < DARK_SUN_ALTITUDE_DEG)
        .filter(sight -> sight.illuminatedFraction() > LEAST_ILLUMINATED)
        .toList();
  }

  private static boolean isUp(Instant at) {
    LocalTime local = LocalTime.ofInstant(at, ZONE);
    return !local.isBefore(UP_FROM) || local.isBefore(UP_TO);
  }

  private DemoReading photograph(MoonSight chance) {
    Instant takenAt = Instant.ofEpochSecond(chance.at().getEpochSecond() + random.nextInt(200));
    MoonSight sight = sky.moonAt(takenAt, SITE);
    return new DemoReading(
        takenAt,
        camera.bracket(takenAt, sight.horizontalDiameterArcmin()),
        Math.round(2 * (sight.apparentAltitudeDeg() + 0.4 * random.nextGaussian())) / 2.0,
        Math.floorMod(Math.round(sight.azimuthDeg() + random.nextGaussian()), 360),
        sight.illuminatedFraction() > 0.6 ? 1 / 125.0 : 1 / 60.0,
        weather.describe());
  }
}
