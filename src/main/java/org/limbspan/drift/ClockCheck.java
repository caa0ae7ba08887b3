package org.limbspan.drift;

import java.util.List;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * Lets explanations by a wrong clock branch off where a reading is odd as logged: the Moon sighted
 * elsewhere than computed, below the horizon, or of a size far from expected.
 */
final class ClockCheck {

  private static final double ODD_ALTITUDE_DEG = 5;
  private static final double ODD_DEVIATIONS = 4;

  private static final double FITTED_SHARE = 0.05;

  private final Sky sky;
  private final Site site;
  private final List<ClockLens> lenses;
  private final ClockFit fit;

  ClockCheck(Sky sky, RigHistory rig) {
    this.sky = sky;
    site = rig.site();
    fit = new ClockFit(sky, site);
    lenses =
        Correction.of(rig.site(), rig.zone()).stream()
            .map(correction -> new ClockLens(sky, correction))
            .toList();
  }

  void spawn(Branching at, Observation reading) {
    if (at.track().hypothesis.lens() instanceof ClockLens clock) {
      if (isOdd(at, reading, clock.sight(reading))) {
        at.off(
            Change.CLOCK_END,
            Cause.CHANCE,
            "clock right",
            at.logHazard(Priors.ENDS_PER_DAY),
            Lens.AS_LOGGED);
      }
    } else if (isOdd(at, reading, reading.sight())) {
      lenses.forEach(lens -> spawn(at, reading, lens));
      fit.ahead(reading)
          .map(ahead -> Correction.offset(site, ahead, FITTED_SHARE))
          .ifPresent(correction -> spawn(at, reading, new ClockLens(sky, correction)));
    }
  }

  private static void spawn(Branching at, Observation reading, ClockLens lens) {
    if (lens.differs(reading)) {
      Correction correction = lens.correction;
      double logPrior =
          Math.log(correction.share())
              + at.logHazard(Priors.CLOCKS_PER_DAY, Priors.CLOCK_FROM_START);
      at.off(Change.CLOCK, correction.cause(), "clock " + correction.name(), logPrior, lens);
    }
  }

  private static boolean isOdd(Branching at, Observation reading, MoonSight sight) {
    double computedDeg = sight.apparentAltitudeDeg();
    double offDeg = reading.sighted().altitudeDeg().orElse(computedDeg) - computedDeg;
    double deviation = Math.sqrt(at.track().noiseVariance()) * at.fact().stated;
    return Sighting.belowHorizon(sight)
        || Math.abs(offDeg) > ODD_ALTITUDE_DEG
        || Math.abs(at.track().departure(at.fact())) > ODD_DEVIATIONS * deviation;
  }
}
