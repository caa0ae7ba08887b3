package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;

/** Small histories made by hand, under a Moon that stands still. */
final class Histories {

  static final Site SITE = new Site(45, 0, 0);
  static final Instant START = Instant.parse("2024-01-01T20:00:00Z");
  static final double STATED = 0.001;

  private Histories() {}

  /** The Moon in the south at 40 degrees, 31 arcminutes wide. */
  static MoonSight moonAt(Instant at) {
    return new MoonSight(at, 384400, 380000, 31, 30.97, 40, 40.02, 180, 0.5, 90, -30, 0, 0);
  }

  static Observation reading(Instant at, double residual) {
    return new Observation(
        at, Axis.HORIZONTAL, 31 * Math.exp(residual), STATED, moonAt(at), 0, Sighted.NONE);
  }

  /** Night pairs, six hours apart, every third day. */
  static List<Observation> pairs(int count, IntToDoubleFunction residual) {
    List<Observation> readings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Instant at = START.plus(Duration.ofDays(3L * (i / 2))).plus(Duration.ofHours(6L * (i % 2)));
      readings.add(reading(at, residual.applyAsDouble(i)));
    }
    return readings;
  }

  static SetupHistory setup(List<CalibrationPoint> calibrations, List<Observation> readings) {
    return new SetupHistory(0, Optional.empty(), Optional.empty(), calibrations, readings);
  }

  static RigHistory rig(List<CalibrationPoint> calibrations, List<Observation> readings) {
    return new RigHistory(SITE, ZoneOffset.UTC, List.of(setup(calibrations, readings)));
  }
}
