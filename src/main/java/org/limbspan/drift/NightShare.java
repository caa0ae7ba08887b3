package org.limbspan.drift;

/**
 * How much of the noise is common to the readings of a night: the variance of the night's part over
 * that of a reading's own part.
 *
 * <p>Algorithm: the mean product of two residuals of the same night, each over its own standard
 * deviation and cut off at 2.5 times what is expected, drawn towards a prior of 0.2 that counts for
 * 30 pairs.
 */
final class NightShare {

  private static final double PRIOR = 0.2;
  private static final double PRIOR_PAIRS = 30;
  private static final double CUT = 2.5;
  private static final double LEAST = 0.02;
  private static final double MOST = 3;

  private double products = PRIOR * PRIOR_PAIRS;
  private double pairs = PRIOR_PAIRS;
  private double sumTonight;
  private int countTonight;

  NightShare snapshot() {
    NightShare same = new NightShare();
    same.products = products;
    same.pairs = pairs;
    same.sumTonight = sumTonight;
    same.countTonight = countTonight;
    return same;
  }

  double value() {
    return Math.min(MOST, Math.max(LEAST, products / pairs));
  }

  /** Takes a fact before the track does. */
  void take(Fact fact, Track track) {
    if (!fact.isReading()) {
      return;
    }
    if (fact.opensNight) {
      sumTonight = 0;
      countTonight = 0;
    }
    double deviation = Math.sqrt(track.noiseVariance()) * fact.stated;
    double most = CUT * Math.sqrt(1 + value());
    double standard = Math.max(-most, Math.min(most, track.departure(fact) / deviation));
    if (countTonight > 0) {
      products += standard * sumTonight / countTonight;
      pairs++;
    }
    sumTonight += standard;
    countTonight++;
  }
}
