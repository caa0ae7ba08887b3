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

  private final List<Fact> facts = new ArrayList<>();
  private final List<Confirmed> confirmed = new ArrayList<>();
  private final List<Raised> raised = new ArrayList<>();
  private final NightShare nightShare = new NightShare();
  private Generation before = new Generation();
  private Generation base = new Generation();
  private Generation search = new Generation();
  private final Spawner spawner;
  private int readings;

  Scan(Spawner spawner, NoisePrior noise, double commonVariance) {
    this.spawner = spawner;
    Track start = Track.start(Lens.AS_LOGGED, noise, Priors.square(Priors.LEVEL), commonVariance);
    base.add(start);
  }

  void take(Fact fact) {
    int index = facts.size();
    facts.add(fact);
    if (index == 0) {
      spawner.fromTheStart(new Branching(base.best().orElseThrow(), fact, 0, search));
    }
    if (readings > 0) {
      base.best().ifPresent(track -> spawner.spawn(new Branching(track, fact, index, search)));
      before.best().ifPresent(track -> spawner.spawn(new Branching(track, fact, index, base)));
    }
    double share = nightShare.value();
    base.best().ifPresent(track -> nightShare.take(fact, track));
    before.take(fact, share);
    base.take(fact, share);
    search.take(fact, share);
    if (fact.isReading()) {
      readings++;
      judge(index);
      if (index % THIN_EVERY == 0) {
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
      generations.get(i).thin(index);
      generations.get(i).prune(references[i], now);
    }
  }

  private void judge(int index) {
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
    }
  }

  List<Confirmed> confirmed() {
    return confirmed;
  }

  /** Everything that was ever said, also what was taken back. */
  List<Raised> raised() {
    return raised;
  }

  java.util.Map<String, Integer> census() {
    java.util.Map<String, Integer> m = new java.util.TreeMap<>();
    for (Track t : search.tracks()) m.merge(t.hypothesis.family(), 1, Integer::sum);
    return m;
  }

  List<Fact> facts() {
    return facts;
  }

  double nightShare() {
    return nightShare.value();
  }

  NoisePrior noise() {
    Track best = base.best().orElseThrow();
    double shape = Math.min(8, best.shape());
    return new NoisePrior(shape, shape * best.noiseVariance());
  }
}
