package org.limbspan.drift;

import org.limbspan.cycle.Observation;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;

/** Lets new explanations branch off from a track before a fact is taken. */
final class Spawner {

  /** Below this the axis makes no difference that could be seen. */
  private static final double LEAST_FLATTENING = 0.0003;

  private final NearMoonLens nearMoon;
  private final ClockCheck clocks;

  Spawner(Sky sky, RigHistory rig) {
    nearMoon = new NearMoonLens(rig.site());
    clocks = new ClockCheck(sky, rig);
  }

  /** Explanations that would hold for the whole history. */
  void fromTheStart(Branching at) {
    at.off(Change.TARGET, Cause.TARGET_WRONG, "target", Math.log(Priors.WRONG_TARGET))
        .addVariance(Track.TARGET, Priors.square(Priors.TARGET_WRONG));
    Track near =
        at.off(Change.NEAR_MOON, Cause.NEAR_MOON, "near", Math.log(Priors.NEAR_MOON), nearMoon);
    near.addVariance(Track.LEVEL, 1);
    near.addVariance(Track.TARGET, 1);
    Track wild = at.off(Change.RATIO, Cause.NEAR_MOON, "wild ratio", Math.log(Priors.WILD_RATIO));
    wild.startEffect(Regressor.RATIO, Priors.square(Priors.WILD_RATIO_SIZE));
    wild.resetNoise(Priors.WILD_NOISE, 1);
    effects(at);
  }

  /** What the residuals may go with, unless they are supposed to already. */
  void effects(Branching at) {
    if (at.track().hasEffect()) {
      return;
    }
    at.off(Change.SWING, Cause.MEASURING_NOT_LINEAR, "swing", Math.log(Priors.SWING))
        .startEffect(Regressor.SWING, Priors.square(Priors.SWING_SIZE));
    at.off(Change.RATIO, Cause.MEASURING_NOT_LINEAR, "ratio", Math.log(Priors.RATIO))
        .startEffect(Regressor.RATIO, Priors.square(Priors.RATIO_SIZE));
    at.off(Change.FLATTENING, Cause.REFRACTION_WRONG, "flat", Math.log(Priors.FLATTENING))
        .startEffect(Regressor.FLATTENING, Priors.square(Priors.FLATTENING_SIZE));
  }

  /** Explanations that begin with the next fact. */
  void spawn(Branching at) {
    if (at.track().readings() > 0) {
      changes(at);
    }
    if (at.fact().observation.isPresent()) {
      axes(at, at.fact().observation.get());
      clocks.spawn(at, at.fact().observation.get());
    } else {
      // left out, the calibration's value has the density of one that went wrong
      at.off(
              Change.CALIBRATION,
              Cause.CALIBRATION_WRONG,
              "calibration " + at.index(),
              Math.log(Priors.WRONG_CALIBRATION))
          .skipNext();
    }
  }

  /** Changes of what earlier readings told. */
  private static void changes(Branching at) {
    step(at, "small step", Priors.SMALL_STEP_SHARE, Priors.SMALL_STEP);
    step(at, "large step", Priors.LARGE_STEP_SHARE, Priors.LARGE_STEP);
    step(at, "gross step", Priors.GROSS_STEP_SHARE, Priors.GROSS_STEP);
    if (at.fact().isReading()) {
      drift(at, "slow drift", Priors.SLOW_DRIFT_SHARE, Priors.SLOW_DRIFT);
      drift(at, "fast drift", 1 - Priors.SLOW_DRIFT_SHARE, Priors.FAST_DRIFT);
      at.off(Change.SCATTER, Cause.SHARPNESS_LOST, "scatter", at.logHazard(Priors.SCATTERS_PER_DAY))
          .resetNoise(Priors.SCATTER_FACTOR, 2);
      ends(at);
    }
  }

  private static void ends(Branching at) {
    double logPrior = at.logHazard(Priors.ENDS_PER_DAY);
    if (at.track().hasTrend()) {
      at.off(Change.DRIFT_END, Cause.CHANCE, "drift ends", logPrior)
          .endTrend(at.fact().day - at.fact().gapDays);
    }
    if (at.track().hypothesis.lens() instanceof AxisLens) {
      at.off(Change.AXIS_END, Cause.CHANCE, "axis right", logPrior, Lens.AS_LOGGED)
          .startEffect(Regressor.NONE, 0);
    }
    if (at.track().hypothesis.change() == Change.SCATTER) {
      at.off(Change.SCATTER_END, Cause.CHANCE, "scatter ends", logPrior)
          .resetNoise(1 / Priors.SCATTER_FACTOR, 2);
    }
  }

  private static void step(Branching at, String family, double share, double deviation) {
    double logPrior = Math.log(share) + at.logHazard(Priors.STEPS_PER_DAY);
    at.off(Change.STEP, Cause.ZOOM_MOVED, family, logPrior)
        .addVariance(Track.LEVEL, Priors.square(deviation));
  }

  private static void drift(Branching at, String family, double share, double deviation) {
    double logPrior = Math.log(share) + at.logHazard(Priors.DRIFTS_PER_DAY);
    at.off(Change.DRIFT, Cause.ZOOM_CREEPING, family, logPrior)
        .startTrend(at.fact().day - at.fact().gapDays, Priors.square(deviation));
  }

  private static void axes(Branching at, Observation reading) {
    if (at.track().readings() > 0 && Math.abs(at.fact().flattening) < LEAST_FLATTENING) {
      return;
    }
    double logPrior = at.logHazard(Priors.AXES_PER_DAY / 2, Priors.AXIS_FROM_START / 2);
    for (Axis measured : Axis.values()) {
      if (measured != reading.axis()) {
        AxisLens lens = new AxisLens(reading.axis(), measured);
        Track child = at.off(Change.AXIS, Cause.AXIS_MISLABELLED, lens.toString(), logPrior, lens);
        if (!child.hasEffect()) {
          child.startEffect(lens::offset, Priors.square(Priors.AXIS_SLACK));
        }
      }
    }
  }
}
