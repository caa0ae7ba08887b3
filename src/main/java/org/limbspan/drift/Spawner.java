package org.limbspan.drift;

import org.limbspan.cycle.Observation;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;

/** Lets new explanations branch off from a track before a fact is taken. */
final class Spawner {

  private static final double LEAST_FLATTENING = 0.0003;

  private final NearMoonLens nearMoon;
  private final ClockCheck clocks;

  Spawner(Sky sky, RigHistory rig) {
    nearMoon = new NearMoonLens(rig.site());
    clocks = new ClockCheck(sky, rig);
  }

  /** Explanations that would hold for the whole history. */
  void fromTheStart(Track track, Generation into) {
    target(track, into);
    nearMoon(track, into);
    effect(track, Change.SWING, Regressor.SWING, Priors.SWING, Priors.SWING_SIZE, into);
    effect(track, Change.RATIO, Regressor.RATIO, Priors.RATIO, Priors.RATIO_SIZE, into);
    effect(
        track,
        Change.FLATTENING,
        Regressor.FLATTENING,
        Priors.FLATTENING,
        Priors.FLATTENING_SIZE,
        into);
  }

  private static void target(Track track, Generation into) {
    Hypothesis wrong = new Hypothesis(Change.TARGET, 0, "target", Priors.LEAST_READINGS);
    Track child = track.child(wrong, Math.log(Priors.WRONG_TARGET));
    child.addVariance(Track.TARGET, Priors.square(Priors.TARGET_WRONG));
    into.add(child);
  }

  private void nearMoon(Track track, Generation into) {
    Hypothesis near = new Hypothesis(Change.NEAR_MOON, 0, "near Moon", Priors.LEAST_READINGS);
    Track child = track.child(near, Math.log(Priors.NEAR_MOON));
    child.regard(nearMoon);
    child.addVariance(Track.LEVEL, 1);
    child.addVariance(Track.TARGET, 1);
    into.add(child);
  }

  private static void effect(
      Track track, Change change, Regressor with, double prior, double size, Generation into) {
    Hypothesis departs = new Hypothesis(change, 0, change.name(), Priors.LEAST_READINGS);
    Track child = track.child(departs, Math.log(prior));
    child.startEffect(with, Priors.square(size));
    into.add(child);
  }

  void spawn(Track track, Fact fact, int index, Generation into) {
    step(track, fact, index, "small", Priors.SMALL_STEP_SHARE, Priors.SMALL_STEP, into);
    step(track, fact, index, "large", 1 - Priors.SMALL_STEP_SHARE, Priors.LARGE_STEP, into);
    if (fact.isReading()) {
      drift(track, fact, index, "slow", Priors.SLOW_DRIFT_SHARE, Priors.SLOW_DRIFT, into);
      drift(track, fact, index, "fast", 1 - Priors.SLOW_DRIFT_SHARE, Priors.FAST_DRIFT, into);
      scatter(track, fact, index, into);
      fact.observation.ifPresent(
          reading -> {
            axes(track, fact, reading, index, into);
            clocks.spawn(track, fact, reading, index, into);
          });
    } else {
      calibration(track, index, into);
    }
  }

  private static void step(
      Track track,
      Fact fact,
      int index,
      String size,
      double share,
      double deviation,
      Generation into) {
    Hypothesis step = new Hypothesis(Change.STEP, index, size, 2);
    double prior = Math.log(share) + Priors.logHazard(Priors.STEPS_PER_DAY, fact.gapDays);
    Track child = track.child(step, prior);
    child.addVariance(Track.LEVEL, Priors.square(deviation));
    into.add(child);
  }

  private static void drift(
      Track track,
      Fact fact,
      int index,
      String speed,
      double share,
      double deviation,
      Generation into) {
    Hypothesis drift = new Hypothesis(Change.DRIFT, index, speed, 3);
    double prior = Math.log(share) + Priors.logHazard(Priors.DRIFTS_PER_DAY, fact.gapDays);
    Track child = track.child(drift, prior);
    child.startTrend(fact.day - fact.gapDays, Priors.square(deviation));
    into.add(child);
  }

  private static void scatter(Track track, Fact fact, int index, Generation into) {
    Hypothesis scatter = new Hypothesis(Change.SCATTER, index, "scatter", 4);
    Track child = track.child(scatter, Priors.logHazard(Priors.SCATTERS_PER_DAY, fact.gapDays));
    child.resetNoise(Priors.SCATTER_FACTOR, 2);
    into.add(child);
  }

  private static void axes(
      Track track, Fact fact, Observation reading, int index, Generation into) {
    if (Math.abs(fact.flattening) < LEAST_FLATTENING) {
      return;
    }
    for (Axis measured : Axis.values()) {
      if (measured != reading.axis()) {
        AxisLens lens = new AxisLens(reading.axis(), measured);
        Hypothesis mislabelled = new Hypothesis(Change.AXIS, index, lens.toString(), 2);
        double prior = Priors.logHazard(Priors.AXES_PER_DAY / 2, fact.gapDays);
        Track child = track.child(mislabelled, prior);
        child.regard(lens);
        into.add(child);
      }
    }
  }

  /** The calibration is left out: its value then has the density of one that went wrong. */
  private static void calibration(Track track, int index, Generation into) {
    Hypothesis wrong = new Hypothesis(Change.CALIBRATION, index, "calibration " + index, 2);
    Track child = track.child(wrong, Math.log(Priors.WRONG_CALIBRATION));
    child.skipNext();
    into.add(child);
  }
}
