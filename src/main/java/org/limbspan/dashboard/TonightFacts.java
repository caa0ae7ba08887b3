package org.limbspan.dashboard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.WorthwhilePass;

/**
 * The Moon over a rig from now on.
 *
 * @param sight the Moon now; empty outside the ephemeris
 * @param plan the pass that goes on or comes next; empty if there is none within the days ahead
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
    List<MoonSight> track,
    List<Apsis> apsides,
    List<ShootingPlan> dark,
    List<WorthwhilePass> worthwhile) {}
