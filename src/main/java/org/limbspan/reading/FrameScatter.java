package org.limbspan.reading;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The frames of one reading: their mean and the standard uncertainty of that mean.
 *
 * <p>s / sqrt n, with s the experimental standard deviation of the n frames (JCGM 100:2008, 4.2.2
 * and 4.2.3). It is a standard uncertainty, without Student's factor: with n - 1 degrees of freedom
 * it is itself uncertain by 1 / sqrt(2 (n - 1)), 50 percent for three frames (ibid., E.4.3), which
 * is for those to consider who judge by it. What a night's frames have in common is not in it.
 */
final class FrameScatter {

  /** With fewer frames a scatter says next to nothing. */
  static final int FEWEST = 3;

  private FrameScatter() {}

  /** The mean; {@code frames} not empty. */
  static double mean(List<Double> frames) {
    return frames.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
  }

  /** Standard uncertainty of the mean; empty for fewer than three frames, and if all are alike. */
  static OptionalDouble uncertaintyOfMean(List<Double> frames) {
    int n = frames.size();
    if (n < FEWEST) {
      return OptionalDouble.empty();
    }
    double mean = mean(frames);
    double squares = frames.stream().mapToDouble(frame -> (frame - mean) * (frame - mean)).sum();
    double uncertainty = Math.sqrt(squares / (n - 1) / n);
    return uncertainty > 0 ? OptionalDouble.of(uncertainty) : OptionalDouble.empty();
  }
}
