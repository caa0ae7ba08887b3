package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.SkyFixture;

/**
 * An invented rig's history with noise as the simulated rigs of {@code reference/readings} have it:
 * three frames of 0.15 percent, 0.04 percent common to a night, 2 percent outliers of 3 to 8
 * standard deviations, stated uncertainties wrong by up to 30 percent, calibrations every 40 days
 * or so with 0.1 percent of their own and 0.1 percent in common. Vertical diameters are flattened
 * by air that differs from night to night.
 */
final class InventedRig {

  private static final double FRAMES = 0.0015 / Math.sqrt(3);
  private static final double NIGHT = 0.0004;
  private static final double READING = Math.hypot(FRAMES, NIGHT);
  private static final double CALIBRATION = 0.0011;
  private static final double SHEET = 0.001;
  private static final double OUTLIERS = 0.02;

  /** ln of a factor on the true size of discs in pixels. */
  interface Scale {
    double at(Instant at);
  }

  /** ln of a factor on the size of the Moon itself. */
  interface World {
    double at(MoonSight sight);
  }

  private final Schedule schedule;
  private final Axis axis;
  private final SplittableRandom random;
  private final double statedFactor;
  private final double sheet;
  private ZoneId zone;
  private Scale scale = at -> 0;
  private World world = sight -> 0;
  private Axis measured;
  private UnaryOperator<Instant> clock = UnaryOperator.identity();
  private double scatter = 1;
  private int measuredFrom = Integer.MAX_VALUE;
  private int clockFrom = Integer.MAX_VALUE;
  private int scatterFrom = Integer.MAX_VALUE;
  private int wrongCalibration = -1;
  private double wrongBy;
  private double targetWrongBy;

  InventedRig(Schedule schedule, Axis axis, long seed) {
    this.schedule = schedule;
    this.axis = axis;
    measured = axis;
    random = new SplittableRandom(seed);
    statedFactor = random.nextDouble(0.75, 1.3);
    sheet = SHEET * random.nextGaussian();
    zone = ZoneOffset.ofHours((int) Math.round(schedule.site().longitudeDeg() / 15));
  }

  InventedRig zone(ZoneId id) {
    zone = id;
    return this;
  }

  InventedRig scale(Scale ofDiscs) {
    scale = ofDiscs;
    return this;
  }

  InventedRig world(World ofMoon) {
    world = ofMoon;
    return this;
  }

  /** Measures along another axis than logged, from a reading on. */
  InventedRig measuredFrom(int reading, Axis along) {
    measuredFrom = reading;
    measured = along;
    return this;
  }

  /** Logs other instants than the true ones, from a reading on. */
  InventedRig clockFrom(int reading, UnaryOperator<Instant> logged) {
    clockFrom = reading;
    clock = logged;
    return this;
  }

  /** Multiplies the noise, from a reading on. */
  InventedRig scatterFrom(int reading, double factor) {
    scatterFrom = reading;
    scatter = factor;
    return this;
  }

  /** Makes one calibration's plate scale wrong by a factor, given as its ln. */
  InventedRig wrongCalibration(int index, double by) {
    wrongCalibration = index;
    wrongBy = by;
    return this;
  }

  /** Makes all calibrations' plate scale wrong by a factor, given as its ln. */
  InventedRig wrongTarget(double by) {
    targetWrongBy = by;
    return this;
  }

  RigHistory history() {
    List<Observation> observations = new ArrayList<>();
    double night = 0;
    double air = 0;
    Instant nightOf = Instant.MIN;
    for (int i = 0; i < schedule.sights().size(); i++) {
      MoonSight sight = schedule.sights().get(i);
      if (nightOf.equals(Instant.MIN)
          || Duration.between(nightOf, sight.at()).compareTo(Duration.ofHours(12)) > 0) {
        nightOf = sight.at();
        night = NIGHT * random.nextGaussian();
        air = 0.04 * random.nextGaussian();
      }
      observations.add(reading(i, sight, night, air));
    }
    return new RigHistory(
        schedule.site(),
        zone,
        List.of(
            new SetupHistory(0, Optional.empty(), Optional.empty(), calibrations(), observations)));
  }

  private Observation reading(int i, MoonSight sight, double night, double air) {
    double seen = sight.diameterArcmin(i >= measuredFrom ? measured : axis);
    double flattening = Math.log(seen / sight.horizontalDiameterArcmin());
    double noise = noise(i, night) + air * flattening;
    double bias = scale.at(sight.at()) + world.at(sight) + sheet + targetWrongBy;
    double stated = READING * statedFactor * (1 + 0.05 * random.nextGaussian());
    Instant logged = i >= clockFrom ? clock.apply(sight.at()) : sight.at();
    MoonSight computed = i >= clockFrom ? SkyFixture.sky().moonAt(logged, schedule.site()) : sight;
    return new Observation(
        logged, axis, seen * Math.exp(bias + noise), stated, computed, 0, sighted(sight));
  }

  private double noise(int i, double night) {
    double noise = FRAMES * random.nextGaussian() + night;
    if (random.nextDouble() < OUTLIERS) {
      double size = random.nextDouble(3, 8) * READING;
      noise += random.nextBoolean() ? size : -size;
    }
    return i >= scatterFrom ? scatter * noise : noise;
  }

  private Sighted sighted(MoonSight sight) {
    if (random.nextDouble() < 0.15) {
      return Sighted.NONE;
    }
    return new Sighted(
        OptionalDouble.of(sight.apparentAltitudeDeg() + 0.8 * random.nextGaussian()),
        OptionalDouble.of(
            Math.floorMod(Math.round(sight.azimuthDeg() + random.nextGaussian()), 360)));
  }

  private List<CalibrationPoint> calibrations() {
    List<CalibrationPoint> points = new ArrayList<>();
    Instant next = schedule.sights().get(0).at().minus(Duration.ofDays(2));
    Instant last = schedule.sights().get(schedule.sights().size() - 1).at();
    while (next.isBefore(last)) {
      double logScale = -scale.at(next) + CALIBRATION * random.nextGaussian();
      if (points.size() == wrongCalibration) {
        logScale += wrongBy;
      }
      points.add(new CalibrationPoint(next, logScale, CALIBRATION, 0.0005));
      next = next.plus(Duration.ofHours(random.nextInt(24 * 34, 24 * 48)));
    }
    return points;
  }
}
