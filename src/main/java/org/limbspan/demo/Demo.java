package org.limbspan.demo;

import java.util.List;
import org.limbspan.reading.BadLines;
import org.limbspan.reading.Circumstances;
import org.limbspan.reading.Diameter;
import org.limbspan.reading.DiameterUnit;
import org.limbspan.reading.NewReading;
import org.limbspan.reading.Readings;
import org.limbspan.rig.NewCalibration;
import org.limbspan.rig.NewRig;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.Target;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Service;

/** Enters the invented rig through the same doors as any other. */
@Service
public class Demo {

  private final Rigs rigs;
  private final Readings readings;
  private final Sky sky;

  Demo(Rigs rigs, Readings readings, Sky sky) {
    this.rigs = rigs;
    this.readings = readings;
    this.sky = sky;
  }

  /** Whether a rig is an invented one. */
  public static boolean invented(Rig rig) {
    return rig.slug().equals(DemoScenario.SLUG) || TwoGardens.isOne(rig.slug());
  }

  /** Enters the invented rig and all of its readings; what is held already is left as it is. */
  public Rig enter() {
    DemoScenario scenario = new DemoScenario(sky);
    Rig rig = rig();
    rigs.record(rig, scenario.calibrations().stream().map(Demo::calibration).toList());
    List<NewReading> invented = scenario.readings().stream().map(Demo::reading).toList();
    readings.record(rig, invented, BadLines.REFUSE_BATCH);
    return rig;
  }

  /** What a first start left unfinished, a second completes: nothing is entered twice. */
  private Rig rig() {
    return rigs.all().stream()
        .filter(held -> held.slug().equals(DemoScenario.SLUG))
        .findFirst()
        .orElseGet(
            () ->
                rigs.describe(
                    new NewRig(
                        DemoScenario.SLUG,
                        DemoScenario.NAME,
                        DemoScenario.SITE,
                        DemoScenario.ZONE,
                        DemoScenario.NOTE)));
  }

  static NewCalibration calibration(DemoCalibration invented) {
    return new NewCalibration(
        invented.takenAt(),
        new Calibration(
            new Target(297, 0.15, 50, 0.02),
            new ImageLength(invented.measuredPx(), 1, LengthUnit.PIXEL)),
        "invented",
        OnConflict.REFUSE,
        null);
  }

  private static NewReading reading(DemoReading invented) {
    return new NewReading(
        invented.takenAt(),
        Axis.HORIZONTAL,
        diameter(invented.framesPx()),
        invented.framesPx(),
        new Circumstances(
            invented.altitudeDeg(),
            invented.azimuthDeg(),
            invented.exposureS(),
            100,
            11.0,
            invented.sky(),
            "invented"),
        OnConflict.REFUSE,
        null);
  }

  /** Mean of the frames, with the uncertainty that such a rig's owner would state. */
  static Diameter diameter(List<Double> framesPx) {
    double mean = framesPx.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    return new Diameter(mean, mean * 0.0009, DiameterUnit.PIXEL);
  }
}
