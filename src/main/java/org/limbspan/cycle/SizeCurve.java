package org.limbspan.cycle;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.stream.IntStream;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

/** The Moon's size over the months as the readings alone draw it, seen from the Earth's centre. */
public final class SizeCurve {

  /** What the lines left out add to the amplitude of the anomalistic one, rms. */
  private static final double AMPLITUDE_FLOOR = 5e-5;

  /** What they add to the difference of perigees and apogees, rms over years. */
  private static final double DIFFERENCE_FLOOR = 2e-4;

  private static final int RATE = 0;
  private static final int COSINE = 1;
  private static final int SINE = 2;

  private final Instant epoch;
  private final RealVector parameters;
  private final RealMatrix covariance;
  private final @Nullable SizeCurve past;

  /**
   * @param parameters rate, then cosine and sine of each of {@link LunarLines}
   */
  SizeCurve(Instant epoch, RealVector parameters, RealMatrix covariance) {
    this(epoch, parameters, covariance, null);
  }

  private SizeCurve(
      Instant epoch, RealVector parameters, RealMatrix covariance, @Nullable SizeCurve past) {
    this.epoch = epoch;
    this.parameters = parameters;
    this.covariance = covariance;
    this.past = past;
  }

  /** The curve that the settled past alone draws, see {@link Milestone}: nearly this one. */
  SizeCurve settled() {
    return past == null ? this : past;
  }

  SizeCurve after(SizeCurve settled) {
    return new SizeCurve(epoch, parameters, covariance, settled);
  }

  static SizeCurve of(LunarFit.Result result) {
    int parallax = result.parallaxIndex();
    int size = result.fit().coefficients().getDimension();
    int[] kept = IntStream.range(0, size).filter(j -> j != parallax).toArray();
    RealVector parameters = new ArrayRealVector(kept.length);
    for (int k = 0; k < kept.length; k++) {
      parameters.setEntry(k, result.fit().coefficients().getEntry(kept[k]));
    }
    return new SizeCurve(
        result.epoch(), parameters, result.fit().covariance().getSubMatrix(kept, kept));
  }

  /** ln of the size over its mean. */
  public double lnSize(Instant at) {
    return at(days(at)).values()[0];
  }

  double days(Instant at) {
    return epoch.until(at, ChronoUnit.MILLIS) / 86_400_000.0;
  }

  double periodDays() {
    return 1 / parameters.getEntry(RATE);
  }

  /** Day of the maximum of the anomalistic line alone that lies nearest to the epoch. */
  double crestDays() {
    double phase = Math.atan2(parameters.getEntry(SINE), parameters.getEntry(COSINE));
    return phase / (2 * Math.PI) * periodDays();
  }

  double[] values(double... days) {
    return at(days).values();
  }

  /** Mean of the curve over {@code high} less its mean over {@code low}, days from the epoch. */
  Estimate meanDifference(double[] high, double[] low) {
    HarmonicModel.At top = at(high);
    HarmonicModel.At bottom = at(low);
    RealVector gradient = new ArrayRealVector(parameters.getDimension());
    for (int j = 0; j < gradient.getDimension(); j++) {
      gradient.setEntry(j, mean(top.columns()[j]) - mean(bottom.columns()[j]));
    }
    double variance = covariance.operate(gradient).dotProduct(gradient);
    return new Estimate(
        mean(top.values()) - mean(bottom.values()),
        Math.hypot(Math.sqrt(variance), DIFFERENCE_FLOOR));
  }

  /** Amplitude (half of crest to trough) of the anomalistic line. */
  Estimate fundamentalAmplitude() {
    double c = parameters.getEntry(COSINE);
    double s = parameters.getEntry(SINE);
    double amplitude = Math.hypot(c, s);
    RealVector gradient = new ArrayRealVector(parameters.getDimension());
    gradient.setEntry(COSINE, c / amplitude);
    gradient.setEntry(SINE, s / amplitude);
    double variance = covariance.operate(gradient).dotProduct(gradient);
    return new Estimate(amplitude, Math.hypot(Math.sqrt(variance), AMPLITUDE_FLOOR));
  }

  Estimate period() {
    double days = periodDays();
    return new Estimate(days, days * days * Math.sqrt(covariance.getEntry(RATE, RATE)));
  }

  private HarmonicModel.At at(double... days) {
    return new HarmonicModel(days, LunarLines.LINES, 1, ParallaxLaw.none())
        .at(parameters.toArray());
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }
}
