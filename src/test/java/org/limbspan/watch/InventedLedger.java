package org.limbspan.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.limbspan.reading.Circumstances;
import org.limbspan.reading.Diameter;
import org.limbspan.reading.DiameterUnit;
import org.limbspan.reading.RecordedReading;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.InstrumentFixture;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Setup;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.Target;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/** What the ledger of an invented rig holds, and what becomes of it. */
final class InventedLedger {

  static final Instant FIRST = Instant.parse("2015-01-03T00:00:00Z");
  private static final Site SITE = new Site(40.1, -3.2, 600);
  private static final Rig RIG =
      new Rig(1, "invented", "Invented roof", SITE, ZoneId.of("Europe/Madrid"), null, FIRST);
  private static final Circumstances SIGHTED =
      new Circumstances(31.0, 200.0, null, null, null, null, null);

  final List<StandardisedReading> readings = new ArrayList<>();
  final List<RecordedReading> unscaled = new ArrayList<>();
  private final List<RecordedCalibration> calibrations = new ArrayList<>();
  private final List<Setup> setups = new ArrayList<>();
  private final SplittableRandom random;
  private Instant next = FIRST;
  private double sizes = 1;
  private long id;

  InventedLedger(long seed) {
    random = new SplittableRandom(seed);
    setups.add(new Setup(1, 0, Optional.empty(), Optional.empty(), null));
    calibrate(FIRST, 1100);
  }

  InstrumentHistory history() {
    return InstrumentFixture.of(RIG, setups, calibrations);
  }

  Judging.Result judgedBy(Judging judging) {
    return judging.judge(history(), List.copyOf(readings), List.copyOf(unscaled));
  }

  Instant last() {
    return next;
  }

  /** From now on every size is measured so much bigger. */
  void grow(double factor) {
    sizes *= factor;
  }

  /** A calibration of the setup in force then, as of a sheet of so many pixels. */
  void calibrate(Instant at, double px) {
    calibrations.add(
        new RecordedCalibration(
            ++id,
            at,
            history().setupAt(at).number(),
            new Calibration(
                new Target(297, 0.15, 50, 0.02), new ImageLength(px, px / 2000, LengthUnit.PIXEL)),
            null,
            at));
  }

  /** From now on the rig is another. */
  void beginSetup() {
    Setup open = setups.remove(setups.size() - 1);
    setups.add(
        new Setup(open.id(), open.number(), open.startedAt(), Optional.of(next), open.note()));
    setups.add(
        new Setup(setups.size() + 1, setups.size(), Optional.of(next), Optional.empty(), null));
  }

  /** Readings of the next days, as they would be taken. */
  List<StandardisedReading> taken(int count) {
    List<StandardisedReading> taken = new ArrayList<>();
    for (; taken.size() < count; next = next.plus(Duration.ofHours(2))) {
      MoonSight sight = SkyFixture.sky().moonAt(next, SITE);
      if (sight.altitudeDeg() > 10 && random.nextDouble() < 0.86) {
        taken.add(
            reading(
                sight,
                sizes * sight.horizontalDiameterArcmin() * Math.exp(0.0009 * random.nextGaussian()),
                random.nextInt(8) == 0 ? SIGHTED : Circumstances.NONE));
      }
    }
    return taken;
  }

  private StandardisedReading reading(MoonSight sight, double arcmin, Circumstances circumstances) {
    RecordedReading recorded =
        new RecordedReading(
            ++id,
            sight.at(),
            Axis.HORIZONTAL,
            1,
            new Diameter(arcmin, 0.001 * arcmin, DiameterUnit.ARCMINUTE),
            List.of(),
            circumstances,
            sight.at());
    return new StandardisedReading(
        recorded, history().setupAt(sight.at()).number(), arcmin, 0.001, 0, sight);
  }

  /** The same reading with another size. */
  StandardisedReading corrected(StandardisedReading old, double factor) {
    return reading(old.sight(), old.diameterArcmin() * factor, old.reading().circumstances());
  }
}
