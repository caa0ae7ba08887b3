package org.limbspan.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.limbspan.sky.Sky;

/**
 * Says what changed in a rig's history, by how much, since when and how sure.
 *
 * <p>The answer is a function of the set of facts: their order makes no difference. A change is
 * found with the first reading with which the evidence is enough; its size and its beginning are
 * estimated from everything that is known by now.
 */
public final class Judge {

  private final Sky sky;

  /**
   * @param sky for where the Moon stood at the instants that a wrong clock would mean
   */
  public Judge(Sky sky) {
    this.sky = sky;
  }

  /** Follows the facts of a setup, given what is supposed beforehand. */
  interface Follower {
    Scan follow(SetupHistory setup, NoisePrior noise, Carried carried);
  }

  /** Everything that the history shows, setup by setup, oldest evidence first. */
  public List<Finding> judge(RigHistory rig) {
    return judge(rig, (setup, noise, carried) -> scan(rig, setup, noise, carried));
  }

  List<Finding> judge(RigHistory rig, Follower follower) {
    List<Finding> findings = new ArrayList<>();
    NoisePrior noise = NoisePrior.AS_STATED;
    Carried carried = Carried.NOTHING;
    List<SetupHistory> setups =
        rig.setups().stream().sorted(Comparator.comparingInt(SetupHistory::number)).toList();
    for (SetupHistory setup : setups) {
      Scan scan = follower.follow(setup, noise, carried);
      Report report = new Report(setup.number(), scan);
      findings.addAll(report.findings());
      noise = scan.noise();
      carried = report.carried();
    }
    return findings;
  }

  private Scan scan(RigHistory rig, SetupHistory setup, NoisePrior noise, Carried carried) {
    Scan scan = open(rig, setup, noise, carried);
    Timeline.of(setup).forEach(scan::take);
    return scan;
  }

  /** The scan of a setup that is the rig's first. */
  Scan scan(RigHistory rig, SetupHistory setup) {
    return scan(rig, setup, NoisePrior.AS_STATED, Carried.NOTHING);
  }

  /** A scan that has taken nothing yet. */
  Scan open(RigHistory rig, SetupHistory setup, NoisePrior noise, Carried carried) {
    return new Scan(new Spawner(sky, rig), noise, commonVariance(setup), carried);
  }

  /** Variance of what all calibrations of a setup share. */
  static double commonVariance(SetupHistory setup) {
    double stated =
        setup.calibrations().stream()
            .mapToDouble(CalibrationPoint::commonUncertainty)
            .max()
            .orElse(0);
    return stated * stated + Priors.square(Priors.TARGET);
  }
}
