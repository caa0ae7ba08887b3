package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * When a change began and how large it is: the posterior over all onsets within a stretch of facts.
 *
 * <p>Definition: for each onset the evidence of the facts of the stretch and the moments of the
 * amount; mixed with the prior of the onsets, which goes with the time between the facts.
 */
final class Onsets {

  private static final double TAIL = 0.025;

  /** Branches off the change whose onset is asked for. */
  interface Branch {
    /** Changes a copy of the track that has not taken {@code fact} yet. */
    void change(Track copy, Fact fact);
  }

  /**
   * One onset.
   *
   * @param first index of the first fact after it
   * @param noise what was known of the noise before it
   */
  record Candidate(int first, Track track, NoisePrior noise) {}

  private final List<Fact> facts;
  private final List<Candidate> candidates = new ArrayList<>();
  private final double[] weights;

  Onsets(Stretch stretch, Branch branch) {
    this(stretch, stretch.start().hypothesis.lens(), branch);
  }

  /**
   * @param lens how the readings are to be taken after the onset
   */
  Onsets(Stretch stretch, Lens lens, Branch branch) {
    facts = stretch.facts();
    Track track = stretch.start();
    for (int i = stretch.whole().from(); i < stretch.onsets().to(); i++) {
      Fact fact = facts.get(i);
      if (i >= stretch.onsets().from()) {
        Track child = track.copy(lens);
        branch.change(child, fact);
        stretch.follow(child, i);
        NoisePrior noise = new NoisePrior(track.shape(), track.shape() * track.noiseVariance());
        candidates.add(new Candidate(i, child, noise));
      }
      track.take(fact, stretch.nightShare());
    }
    weights = weights();
  }

  private double[] weights() {
    double[] logs = new double[candidates.size()];
    double sum = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      Candidate candidate = candidates.get(i);
      double gap = facts.get(candidate.first()).gapDays;
      logs[i] = candidate.track().logEvidence() + Math.log(gap + Priors.VISIT_DAYS);
      sum = Noise.logSum(sum, logs[i]);
    }
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.exp(logs[i] - sum);
    }
    return logs;
  }

  /** The likeliest onset; of equals the earliest. */
  Candidate likeliest() {
    return candidates.get(indexOfLikeliest());
  }

  private int indexOfLikeliest() {
    int best = 0;
    for (int i = 1; i < weights.length; i++) {
      if (weights[i] > weights[best]) {
        best = i;
      }
    }
    return best;
  }

  int first() {
    return likeliest().first();
  }

  /**
   * Beginning of the interval that holds the onset with at least 95 percent. It always holds the
   * likeliest onset, which lies in a tail of its own where many are about equally likely.
   */
  Instant from() {
    double sum = 0;
    int i = 0;
    while (i < indexOfLikeliest() && sum + weights[i] < TAIL) {
      sum += weights[i++];
    }
    return before(candidates.get(i).first());
  }

  /** End of the interval that holds the onset with at least 95 percent, the likeliest with it. */
  Instant to() {
    double sum = 0;
    int i = weights.length - 1;
    while (i > indexOfLikeliest() && sum + weights[i] < TAIL) {
      sum += weights[i--];
    }
    return facts.get(candidates.get(i).first()).at;
  }

  /** The middle of the likeliest gap between two facts. */
  Instant at() {
    Instant start = before(first());
    return start.plus(Duration.between(start, facts.get(first()).at).dividedBy(2));
  }

  private Instant before(int index) {
    return facts.get(Math.max(0, index - 1)).at;
  }

  /** Mean over all onsets. */
  double mean(ToDoubleFunction<Candidate> figure) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] * figure.applyAsDouble(candidates.get(i));
    }
    return sum;
  }

  /** Mean of one of the track's unknowns over all onsets. */
  double mean(int unknown) {
    return mean((Candidate each) -> each.track().mean(unknown));
  }

  /** Standard uncertainty of one of the track's unknowns over all onsets. */
  double uncertainty(int unknown) {
    double mean = mean(unknown);
    return Math.sqrt(
        mean(
            (Candidate each) -> {
              double off = each.track().mean(unknown) - mean;
              return each.track().variance(unknown) + off * off;
            }));
  }
}
