package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.limbspan.cycle.NearMoon;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;

/**
 * One known thing that goes wrong with an invented rig.
 *
 * @param logged axis under which the readings are logged
 * @param fault breaks the rig from a reading on
 */
record Scenario(String name, Axis logged, Fault fault) {

  /** Breaks a rig whose readings come by a schedule, from the reading of an index on. */
  interface Fault {
    void breakDown(InventedRig rig, Schedule schedule, int onset);
  }

  static List<Scenario> all() {
    List<Scenario> all = new ArrayList<>();
    all.add(of("clean", (rig, schedule, onset) -> {}));
    for (double percent : new double[] {0.3, -0.5, 1, -3, 8, 30}) {
      all.add(scale("step " + percent, readings -> readings < 0 ? 0 : percent));
    }
    all.add(scale("step 0.5, back 20 later", n -> n < 0 || n >= 20 ? 0 : 0.5));
    all.add(scale("step 0.5, -1 20 later", n -> n < 0 ? 0 : n < 20 ? 0.5 : -0.5));
    for (double percent : new double[] {0.05, -0.1, 0.3}) {
      all.add(drift("drift " + percent, percent, Integer.MAX_VALUE));
    }
    all.add(drift("drift 0.2, stopped 30 later", 0.2, 30));
    for (double factor : new double[] {2, 3, 5}) {
      all.add(of("scatter x" + factor, (rig, s, onset) -> rig.scatterFrom(onset, factor)));
    }
    calibrations(all);
    axes(all);
    clocks(all);
    worlds(all);
    return all;
  }

  private static Scenario of(String name, Fault fault) {
    return new Scenario(name, Axis.HORIZONTAL, fault);
  }

  /** A scale in percent that goes with the number of readings since the onset. */
  private static Scenario scale(String name, ToDoubleFunction<Integer> percent) {
    return of(
        name,
        (rig, schedule, onset) ->
            rig.scale(
                at -> {
                  int next = 0;
                  while (next < schedule.sights().size()
                      && !schedule.sights().get(next).at().isAfter(at)) {
                    next++;
                  }
                  return percent.applyAsDouble(next - 1 - onset) / 100;
                }));
  }

  private static Scenario drift(String name, double percentIn30Days, int readings) {
    return of(
        name,
        (rig, schedule, onset) -> {
          int end = Math.min(schedule.sights().size() - 1, onset + Math.min(readings, 100_000));
          double from = Fact.daysOf(schedule.sights().get(onset).at());
          double to = Fact.daysOf(schedule.sights().get(end).at());
          double last = readings == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : to;
          rig.scale(
              at -> percentIn30Days / 3000 * Math.max(0, Math.min(last, Fact.daysOf(at)) - from));
        });
  }

  private static void calibrations(List<Scenario> all) {
    for (double percent : new double[] {-9, -2, 1, 0.7}) {
      double by = percent / 100;
      all.add(of("calibration " + percent, (rig, s, onset) -> rig.wrongCalibration(3, by)));
      all.add(of("first calibration " + percent, (rig, s, onset) -> rig.wrongCalibration(0, by)));
      all.add(of("all calibrations " + percent, (rig, s, onset) -> rig.wrongTarget(by)));
    }
  }

  private static void axes(List<Scenario> all) {
    for (Axis logged : Axis.values()) {
      for (Axis measured : Axis.values()) {
        if (measured != logged) {
          String name = measured.label() + " as " + logged.label();
          all.add(new Scenario(name, logged, (rig, s, onset) -> rig.measuredFrom(onset, measured)));
          all.add(
              new Scenario(
                  name + ", always", logged, (rig, s, onset) -> rig.measuredFrom(0, measured)));
        }
      }
    }
  }

  private static void clocks(List<Scenario> all) {
    for (String name : new String[] {"Asia/Kolkata", "Europe/Madrid", "America/Denver"}) {
      ZoneId zone = ZoneId.of(name);
      all.add(
          of(
              "local time of " + name,
              (rig, s, onset) -> rig.zone(zone).clockFrom(onset, at -> local(at, zone))));
      all.add(
          of(
              "local time of " + name + ", always",
              (rig, s, onset) -> rig.zone(zone).clockFrom(0, at -> local(at, zone))));
    }
    for (int minutes : new int[] {60, -60, 720, 200}) {
      Duration ahead = Duration.ofMinutes(minutes);
      all.add(
          of(
              "clock ahead by " + minutes + " min",
              (rig, s, onset) -> rig.clockFrom(onset, at -> at.plus(ahead))));
    }
  }

  private static Instant local(Instant at, ZoneId zone) {
    return at.atZone(zone).toLocalDateTime().toInstant(ZoneOffset.UTC);
  }

  private static void worlds(List<Scenario> all) {
    for (double heightKm : new double[] {NearMoon.HEIGHT_KM, 8000}) {
      all.add(
          of(
              String.format("near Moon at %.0f km", heightKm),
              (rig, schedule, onset) ->
                  rig.world(sight -> near(schedule.site(), sight, heightKm))));
    }
    all.add(
        of(
            "swing larger by 10 %",
            (rig, s, onset) ->
                rig.world(sight -> -0.1 * Math.log(sight.geocentricDistanceKm() / 384400))));
    all.add(
        of(
            "parallax larger by 30 %",
            (rig, s, onset) ->
                rig.world(
                    sight ->
                        -0.3
                            * Math.log(
                                sight.topocentricDistanceKm() / sight.geocentricDistanceKm()))));
  }

  private static double near(Site site, MoonSight sight, double heightKm) {
    double distanceKm = NearMoon.distanceKm(sight, site, heightKm);
    return Math.log(5500 / distanceKm * 31 / sight.horizontalDiameterArcmin());
  }
}
