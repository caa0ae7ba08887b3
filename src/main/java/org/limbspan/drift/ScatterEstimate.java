package org.limbspan.drift;

import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.stat.descriptive.rank.Median;

/**
 * Growth of the scatter: the ratio of two variances, each with an inverse gamma distribution, goes
 * with Fisher's F.
 */
final class ScatterEstimate {

  private static final double NEW_SHAPE = 1.5;

  private ScatterEstimate() {}

  static Estimated of(Stretch stretch) {
    Onsets onsets =
        new Onsets(stretch, (track, fact) -> track.resetNoise(Priors.SCATTER_FACTOR, NEW_SHAPE));
    double variance = onsets.mean(ScatterEstimate::ratio);
    double factor = Math.sqrt(variance);
    Onsets.Candidate likeliest = onsets.likeliest();
    FDistribution ratio =
        new FDistribution(2 * likeliest.track().shape(), 2 * likeliest.noise().shape());
    double least = factor / Math.sqrt(ratio.inverseCumulativeProbability(0.975));
    double most = factor / Math.sqrt(ratio.inverseCumulativeProbability(0.025));
    double stated = 100 * typical(stretch.readingsFrom(stretch.whole().from()));
    double before = stated * Math.sqrt(likeliest.noise().rate() / likeliest.noise().shape());
    Figures.Scatter figures = new Figures.Scatter(factor, least, most, before, before * factor);
    return Estimated.of(onsets, 100 * (factor - 1), 100 * (most - least) / 4, figures);
  }

  private static double ratio(Onsets.Candidate candidate) {
    return candidate.track().noiseVariance() * candidate.noise().shape() / candidate.noise().rate();
  }

  private static double typical(List<Fact> readings) {
    return new Median().evaluate(readings.stream().mapToDouble(fact -> fact.stated).toArray());
  }
}
