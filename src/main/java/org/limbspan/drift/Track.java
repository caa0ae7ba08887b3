package org.limbspan.drift;

/**
 * One explanation of a setup's history so far, followed reading by reading.
 *
 * <p>Definition: residual = level + trend * days since the trend began + night + effect * regressor
 * + lens offset + noise; calibration = level + trend + target + noise. Level, trend, night, target
 * (the error that all calibrations share) and effect are jointly normal; the noise is normal with
 * the stated uncertainty times an unknown factor, whose square has an inverse gamma distribution,
 * or, rarely, that of an outlier or a blunder.
 *
 * <p>Algorithm: the growth model with discrete kinds of disturbance of Harrison and Stevens (1976),
 * Bayesian forecasting, J. R. Statist. Soc. B 38, 205: each reading multiplies the evidence by its
 * predictive density and updates the moments; the mixture over normal, outlier and blunder is
 * collapsed to its first two moments. A scalar reading needs no matrix but a rank-one update.
 *
 * <p>Not safe for use by several threads; mutable for the sake of speed, and never leaves the
 * package.
 */
final class Track {

  static final int LEVEL = 0;
  static final int TREND = 1;
  static final int NIGHT = 2;
  static final int TARGET = 3;
  static final int EFFECT = 4;
  private static final int SIZE = 5;

  private final double[] mean = new double[SIZE];
  private final double[] covariance = new double[SIZE * SIZE];
  private final double[] gain = new double[SIZE];

  final Hypothesis hypothesis;
  private Regressor effect;
  private double trendFromDay;
  private double shape;
  private double rate;
  private double logEvidence;
  private int readings;
  private int readingsSince;
  private boolean skipsNext;

  private Track(Hypothesis hypothesis, Regressor effect, double shape, double rate) {
    this.hypothesis = hypothesis;
    this.effect = effect;
    this.shape = shape;
    this.rate = rate;
  }

  /**
   * A track that knows nothing yet.
   *
   * @param noise what is supposed of the noise
   * @param targetVariance of the error that all calibrations share
   */
  static Track start(
      Hypothesis hypothesis, NoisePrior noise, double levelVariance, double targetVariance) {
    Track track = new Track(hypothesis, Regressor.NONE, noise.shape(), noise.rate());
    track.addVariance(LEVEL, levelVariance);
    track.addVariance(TARGET, targetVariance);
    return track;
  }

  /** A copy that supposes one change more, with the logarithm of how likely that is beforehand. */
  Track child(Hypothesis next, double logPrior) {
    Track child = new Track(next, effect, shape, rate);
    System.arraycopy(mean, 0, child.mean, 0, SIZE);
    System.arraycopy(covariance, 0, child.covariance, 0, SIZE * SIZE);
    child.trendFromDay = trendFromDay;
    child.readings = readings;
    child.logEvidence = logEvidence + logPrior;
    return child;
  }

  /** A copy that supposes the same and has seen the same. */
  Track snapshot() {
    Track same = child(hypothesis, 0);
    same.readingsSince = readingsSince;
    same.skipsNext = skipsNext;
    return same;
  }

  /** A copy that takes the readings in another way. */
  Track copy(Lens lens) {
    return child(Hypothesis.none(lens), 0);
  }

  void addVariance(int index, double variance) {
    covariance[index * SIZE + index] += variance;
  }

  /** Lets a new trend begin on top of what was; the old trend's gain goes into the level. */
  void startTrend(double day, double variance) {
    moveTrendTo(day);
    addVariance(TREND, variance);
  }

  /** Ends the trend: from {@code day} on the level stays where it is. */
  void endTrend(double day) {
    moveTrendTo(day);
    forget(TREND, 0);
  }

  private void moveTrendTo(double day) {
    double days = day - trendFromDay;
    if (hasTrend()) {
      mean[LEVEL] += days * mean[TREND];
      for (int j = 0; j < SIZE; j++) {
        covariance[LEVEL * SIZE + j] += days * covariance[TREND * SIZE + j];
      }
      for (int j = 0; j < SIZE; j++) {
        covariance[j * SIZE + LEVEL] += days * covariance[j * SIZE + TREND];
      }
    }
    trendFromDay = day;
  }

  /** Leaves the next calibration out, as one that went wrong. */
  void skipNext() {
    skipsNext = true;
  }

  void startEffect(Regressor newEffect, double variance) {
    forget(EFFECT, variance);
    effect = newEffect;
  }

  /** Supposes noise of {@code factor} times what it was, not well known. */
  void resetNoise(double factor, double newShape) {
    rate = rate / shape * factor * factor * newShape;
    shape = newShape;
  }

  private void forget(int index, double variance) {
    mean[index] = 0;
    for (int j = 0; j < SIZE; j++) {
      covariance[index * SIZE + j] = 0;
      covariance[j * SIZE + index] = 0;
    }
    covariance[index * SIZE + index] = variance;
  }

  /** Takes the next fact. */
  void take(Fact fact, double nightShare) {
    if (fact.isReading()) {
      takeReading(fact, nightShare);
    } else {
      takeCalibration(fact);
    }
  }

  private void takeReading(Fact fact, double nightShare) {
    double own = noiseVariance() * fact.stated * fact.stated;
    double variance = own + fact.air;
    if (fact.opensNight) {
      forget(NIGHT, nightShare * own);
    }
    double x = effect.of(fact);
    double predicted = project(fact.day - trendFromDay, 1, 0, x);
    double prior = priorVariance;
    double error = fact.value - hypothesis.lens().offset(fact) - predicted;
    double total = prior + variance;
    double freedom = 2 * shape;
    double z2 = error * error / total;
    double usual = Noise.USUAL_SHARE * Noise.studentDensity(z2, total, freedom);
    double wide = prior + Noise.OUTLIER_FACTOR * variance;
    double astray = Noise.OUTLIER_SHARE * Noise.normalDensity(error * error / wide, wide);
    double blunder = Noise.blunderDensity(error, prior);
    double density = usual + astray + blunder;
    logEvidence += Math.log(density) + hypothesis.lens().logOdds(fact);
    double usualWeight = usual / density;
    double astrayWeight = astray / density;
    double first = usualWeight / total + astrayWeight / wide;
    double second = usualWeight / (total * total) + astrayWeight / (wide * wide);
    update(error, first, second);
    learnNoise(usualWeight, z2);
    readings++;
    readingsSince++;
  }

  private void takeCalibration(Fact fact) {
    double predicted = project(fact.day - trendFromDay, 0, 1, effect.of(fact));
    if (skipsNext) {
      skipsNext = false;
      logEvidence += Math.log(Noise.wrongCalibrationDensity(fact.value - predicted, priorVariance));
      return;
    }
    double variance = Noise.CALIBRATION_FACTOR * fact.stated * fact.stated;
    double total = priorVariance + variance;
    double error = fact.value - predicted;
    double z2 = error * error / total;
    double freedom = Noise.CALIBRATION_FREEDOM;
    logEvidence += Math.log(Noise.studentDensity(z2, total, freedom));
    double weight = Math.min(1, (freedom + 1) / (freedom + z2));
    update(error, weight / total, weight * weight / (total * total));
  }

  private double priorVariance;

  /** Predicts along h = (1, g, n, c, x), leaving the gain vector and the variance behind. */
  private double project(double g, double n, double c, double x) {
    double predicted = mean[0] + g * mean[1] + n * mean[2] + c * mean[3] + x * mean[4];
    for (int i = 0; i < SIZE; i++) {
      int row = i * SIZE;
      gain[i] =
          covariance[row]
              + g * covariance[row + 1]
              + n * covariance[row + 2]
              + c * covariance[row + 3]
              + x * covariance[row + 4];
    }
    priorVariance = gain[0] + g * gain[1] + n * gain[2] + c * gain[3] + x * gain[4];
    return predicted;
  }

  private void update(double error, double first, double second) {
    double spread = error * error * (second - first * first) - first;
    double step = error * first;
    for (int i = 0; i < SIZE; i++) {
      double scaled = spread * gain[i];
      int row = i * SIZE;
      for (int j = 0; j < SIZE; j++) {
        covariance[row + j] += scaled * gain[j];
      }
      mean[i] += step * gain[i];
    }
  }

  private void learnNoise(double weight, double z2) {
    double square = noiseVariance();
    shape += weight / 2;
    rate += weight / 2 * square * z2;
    if (shape > Noise.LONGEST_SHAPE) {
      rate *= Noise.LONGEST_SHAPE / shape;
      shape = Noise.LONGEST_SHAPE;
    }
  }

  /** Square of the factor on the stated uncertainty. */
  double noiseVariance() {
    return rate / shape;
  }

  double shape() {
    return shape;
  }

  double logEvidence() {
    return logEvidence;
  }

  void addEvidence(double logOfMore) {
    logEvidence = Noise.logSum(logEvidence, logOfMore);
  }

  void discount(double logFactor) {
    logEvidence += logFactor;
  }

  /** Readings taken, also before the change. */
  int readings() {
    return readings;
  }

  /** Readings taken since the change. */
  int readingsSince() {
    return readingsSince;
  }

  boolean counts() {
    return readingsSince >= hypothesis.change().leastReadings();
  }

  boolean hasEffect() {
    return effect != Regressor.NONE;
  }

  boolean hasTrend() {
    return covariance[TREND * SIZE + TREND] > 0;
  }

  double mean(int index) {
    return mean[index];
  }

  double variance(int index) {
    return covariance[index * SIZE + index];
  }

  /** Residual of a reading against level, trend, effect and lens, but not against its night. */
  double departure(Fact fact) {
    return fact.value
        - hypothesis.lens().offset(fact)
        - mean[LEVEL]
        - (fact.day - trendFromDay) * mean[TREND]
        - effect.of(fact) * mean[EFFECT];
  }
}
