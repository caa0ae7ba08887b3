package org.limbspan.drift;

import java.util.ArrayList;
import java.util.List;

/**
 * Follows the facts of one setup in their order and says when the evidence for a change, or for one
 * change more, is enough.
 *
 * <p>Definition: the evidence is the odds of all explanations with one change more against all with
 * none more; what is said is said when the odds pass a bound. This is the rule of Shiryaev (1963),
 * On optimum methods in quickest detection problems, Theory Probab. Appl. 8, 22, with the level
 * before, the noise and the size of the change integrated out.
 */
final class Scan {

  private static final int THIN_EVERY = 8;

  private final Spawner spawner;
  private final NoisePrior noise;
  private final double targetVariance;
  private final Carried carried;
  private final List<Fact> facts;
  private final List<Confirmed> confirmed;
  private final List<Raised> raised;
  private final NightShare nightShare;
  private Generation before;
  private Generation base;
  private Generation search;
  private int readings;
  private boolean inherits;

  /**
   * @param targetVariance of the error that all calibrations share
   * @param carried what the setup may inherit
   */
  Scan(Spawner spawner, NoisePrior noise, double targetVariance, Carried carried) {
    this.spawner = spawner;
    this.noise = noise;
    this.targetVariance = targetVariance;
    this.carried = carried;
    facts = new ArrayList<>();
    confirmed = new ArrayList<>();
    raised = new ArrayList<>();
    nightShare = new NightShare();
    before = new Generation();
    base = new Generation();
    search = new Generation();
    base.add(Carried.NOTHING.start(noise, targetVariance));
    if (!carried.isNothing()) {
      base.add(carried.start(noise, targetVariance));
    }
  }

  private Scan(Scan other) {
    spawner = other.spawner;
    noise = other.noise;
    targetVariance = other.targetVariance;
    carried = other.carried;
    inherits = other.inherits;
    facts = new ArrayList<>(other.facts);
    confirmed = new ArrayList<>(other.confirmed.stream().map(Confirmed::snapshot).toList());
    raised = new ArrayList<>(other.raised);
    nightShare = other.nightShare.snapshot();
    before = other.before.snapshot();
    base = other.base.snapshot();
    search = other.search.snapshot();
    readings = other.readings;
  }

  /** A copy that goes its own way from here on. */
  Scan snapshot() {
    return new Scan(this);
  }

  void take(Fact fact) {
    int index = facts.size();
    facts.add(fact);
    Track best = base.best().orElseThrow();
    if (index == 0) {
      spawner.fromTheStart(new Branching(best, fact, index, search));
    }
    spawner.spawn(new Branching(best, fact, index, search));
    before.best().ifPresent(track -> spawner.spawn(new Branching(track, fact, index, base)));
    double share = nightShare.value();
    nightShare.take(fact, best);
    before.take(fact, share);
    base.take(fact, share);
    search.take(fact, share);
    if (fact.isReading()) {
      readings++;
      judge(index);
      if (readings % THIN_EVERY == 0) {
        tidy(index);
      }
    }
  }

  private void tidy(int index) {
    Fact now = facts.get(index);
    double best = Math.max(before.bestLog(), Math.max(base.bestLog(), search.bestLog()));
    double[] references = {best, Math.min(best, base.bestLog()), best};
    List<Generation> generations = List.of(before, base, search);
    for (int i = 0; i < references.length; i++) {
      generations.get(i).thin(references[i], index);
      generations.get(i).prune(references[i], now);
    }
  }

  private void judge(int index) {
    if (confirmed.isEmpty()) {
      inherits = base.best().orElseThrow().hypothesis.isInherited();
    }
    if (readings < Priors.LEAST_READINGS) {
      return;
    }
    if (!confirmed.isEmpty()) {
      Confirmed last = confirmed.get(confirmed.size() - 1);
      Masses masses = base.against(before);
      if (masses.logOdds() < Priors.RETRACT) {
        confirmed.remove(last);
        search = base;
        base = before;
        before = new Generation();
        return;
      }
      last.note(index, masses);
    }
    Masses masses = search.against(base);
    if (masses.logOdds() > Priors.ALARM) {
      Confirmed next = new Confirmed(index);
      next.note(index, masses);
      raised.add(new Raised(index, masses.likeliest()));
      confirmed.add(next);
      before = base;
      base = search;
      search = new Generation();
      Track best = base.best().orElseThrow();
      spawner.effects(new Branching(best, facts.get(index), index, search));
    }
  }

  List<Confirmed> confirmed() {
    return confirmed;
  }

  /** Everything that was ever said, also what was taken back. */
  List<Raised> raised() {
    return raised;
  }

  List<Fact> facts() {
    return facts;
  }

  double nightShare() {
    return nightShare.value();
  }

  /** What the setup inherited, by what explains it best. */
  Carried origin() {
    return inherits ? carried : Carried.NOTHING;
  }

  /** How the facts are to be looked at before the first change. */
  Background background() {
    return new Background(origin().lens(), noise, targetVariance, false);
  }

  /** What this setup tells of the noise in the next. */
  NoisePrior noise() {
    Track best = base.best().orElseThrow();
    double shape = Math.min(8, best.shape());
    return new NoisePrior(shape, shape * best.noiseVariance());
  }
}
