package org.limbspan.dashboard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.PassOverLine;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.WorthwhilePass;

/**
 * The Moon over a rig from now on.
 *
 * @param sight the Moon now; empty outside the ephemeris
 * @param plan the pass that goes on or comes next; empty if there is none within the days ahead
 * @param own the rig's own horizon, if it was entered
 * @param track the Moon from before the rise of that pass until after its set
 * @param apsides those ahead
 * @param dark passes ahead with a night pair in the dark
 * @param worthwhile passes ahead worth staying up for
 */
record TonightFacts(
    Rig rig,
    Instant now,
    Optional<MoonSight> sight,
    Optional<ShootingPlan> plan,
    Optional<OwnHorizon> own,
    List<MoonSight> track,
    List<Apsis> apsides,
    List<ShootingPlan> dark,
    List<WorthwhilePass> worthwhile) {

  /**
   * The rig's own horizon.
   *
   * @param seen that pass over it; empty if the Moon does not come over it, or there is no pass
   */
  record OwnHorizon(HorizonLine line, Optional<PassOverLine> seen) {}
}
