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

  /** Everything that the history shows, oldest evidence first within each setup. */
  public List<Finding> judge(RigHistory rig) {
    List<Finding> findings = new ArrayList<>();
    NoisePrior noise = NoisePrior.AS_STATED;
    List<SetupHistory> setups =
        rig.setups().stream().sorted(Comparator.comparingInt(SetupHistory::number)).toList();
    for (SetupHistory setup : setups) {
      Scan scan = scan(rig, setup, noise);
      findings.addAll(new Report(setup.number(), scan, noise).findings());
      noise = scan.noise();
    }
    return findings;
  }

  Scan scan(RigHistory rig, SetupHistory setup, NoisePrior noise) {
    List<Fact> facts = Timeline.of(setup);
    double common = 0;
    for (Fact fact : facts) {
      common = Math.max(common, fact.common);
    }
    Scan scan =
        new Scan(new Spawner(sky, rig), noise, common * common + Priors.square(Priors.TARGET));
    for (Fact fact : facts) {
      scan.take(fact);
    }
    return scan;
  }
}
