package org.limbspan.drift;

import java.util.List;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Sky;

/**
 * Lets explanations by a wrong clock branch off where a reading is odd as logged: the Moon sighted
 * elsewhere than computed, below the horizon, or of a size far from expected.
 */
final class ClockCheck {

  private static final double ODD_ALTITUDE_DEG = 5;
  private static final double ODD_DEVIATIONS = 4;

  private final List<ClockLens> lenses;

  ClockCheck(Sky sky, RigHistory rig) {
    lenses =
        Correction.of(rig.site(), rig.zone()).stream()
            .map(correction -> new ClockLens(sky, correction))
            .toList();
  }

  void spawn(Track track, Fact fact, Observation reading, int index, Generation into) {
    if (track.lens() instanceof ClockLens clock) {
      end(track, fact, reading, clock, index, into);
      return;
    }
    if (!isOdd(track, fact, reading, reading.sight())) {
      return;
    }
    for (ClockLens lens : lenses) {
      if (lens.differs(reading)) {
        Correction correction = lens.correction;
        Hypothesis wrong = new Hypothesis(Change.CLOCK, index, "clock " + correction.name(), 2);
        double prior =
            Math.log(correction.share()) + Priors.logHazard(Priors.CLOCKS_PER_DAY, fact.gapDays);
        Track child = track.child(wrong, prior);
        child.regard(lens);
        into.add(child);
      }
    }
  }

  private static void end(
      Track track, Fact fact, Observation reading, ClockLens clock, int index, Generation into) {
    if (isOdd(track, fact, reading, clock.sight(reading))) {
      Hypothesis right = new Hypothesis(Change.CLOCK_END, index, "clock right", 2);
      Track child = track.child(right, Priors.logHazard(Priors.ENDS_PER_DAY, fact.gapDays));
      child.regard(Lens.AS_LOGGED);
      into.add(child);
    }
  }

  private static boolean isOdd(Track track, Fact fact, Observation reading, MoonSight sight) {
    double deviation = Math.sqrt(track.noiseVariance()) * fact.stated;
    return Sighting.belowHorizon(sight)
        || Math.abs(
                reading.sighted().altitudeDeg().orElse(sight.apparentAltitudeDeg())
                    - sight.apparentAltitudeDeg())
            > ODD_ALTITUDE_DEG
        || Math.abs(track.departure(fact)) > ODD_DEVIATIONS * deviation;
  }
}
