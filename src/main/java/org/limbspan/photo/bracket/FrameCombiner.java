package org.limbspan.photo.bracket;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Combines the frames of a bracket.
 *
 * <p>Weighted mean with the inverse variances of the frames as weights. Its uncertainty is
 * propagated (JCGM 100:2008, 5.2.2): own parts as independent, shared parts as fully correlated, so
 * that more frames never make the Moon's relief smaller. Own parts are enlarged by the Birge ratio
 * where the frames scatter more than they say (Birge 1932), never made smaller.
 *
 * <p>Of three frames or more, one that differs from the mean of the others by more than four
 * standard uncertainties, in own parts alone, is set aside while more than half remain and the
 * others agree among themselves.
 */
final class FrameCombiner {

  private static final double ODD = 4;

  /** What the Moon's size changes within a bracket, and what was not thought of, over the size. */
  private static final double TOLERANCE = 2e-4;

  private final List<Frame> bracket;
  private final List<Frame> used;
  private final List<Frame> odd = new ArrayList<>();

  FrameCombiner(List<Frame> bracket) {
    if (bracket.isEmpty()) {
      throw new IllegalArgumentException("bracket of no frames: expected one or more");
    }
    this.bracket = bracket.stream().sorted(Frame.BY_TIME).toList();
    used = new ArrayList<>(this.bracket);
  }

  CombinedFrames combined() {
    setAsideOddOnes();
    double mean = mean(used);
    return new CombinedFrames(
        instant(),
        mean,
        uncertainty(mean),
        used,
        odd.stream().sorted(Frame.BY_TIME).map(frame -> setAside(frame, mean)).toList(),
        birgeRatio(used, mean),
        ExposureTrend.of(bracket));
  }

  private void setAsideOddOnes() {
    Optional<Frame> next = oddest();
    while (next.isPresent()) {
      used.remove(next.get());
      odd.add(next.get());
      next = oddest();
    }
  }

  /** The frame farthest from the others, if it is odd and they are not. */
  private Optional<Frame> oddest() {
    int left = used.size() - 1;
    if (left < 2 || 2 * left <= bracket.size()) {
      return Optional.empty();
    }
    Frame farthest =
        used.stream().max(Comparator.comparingDouble(frame -> distance(frame, used))).orElseThrow();
    if (distance(farthest, used) <= ODD) {
      return Optional.empty();
    }
    List<Frame> others = used.stream().filter(frame -> !frame.equals(farthest)).toList();
    boolean othersAgree =
        left > 2 || others.stream().allMatch(frame -> distance(frame, others) <= ODD);
    return othersAgree ? Optional.of(farthest) : Optional.empty();
  }

  /** Distance of a frame from the mean of the others, in standard uncertainties. */
  private static double distance(Frame frame, List<Frame> all) {
    List<Frame> others = all.stream().filter(each -> !each.equals(frame)).toList();
    double mean = mean(others);
    double variance =
        square(frame.ownUncertaintyPx()) + ownVariance(others) + square(TOLERANCE * mean);
    return Math.abs(frame.diameterPx() - mean) / Math.sqrt(variance);
  }

  private SetAside setAside(Frame frame, double mean) {
    double variance =
        square(frame.ownUncertaintyPx()) + ownVariance(used) + square(TOLERANCE * mean);
    double difference = frame.diameterPx() - mean;
    return new SetAside(frame, 100 * difference / mean, Math.abs(difference) / Math.sqrt(variance));
  }

  private static double mean(List<Frame> frames) {
    double weights = 0;
    double sum = 0;
    for (Frame frame : frames) {
      weights += 1 / frame.varianceAlone();
      sum += frame.diameterPx() / frame.varianceAlone();
    }
    return sum / weights;
  }

  private static double weight(Frame frame, List<Frame> frames) {
    double weights = frames.stream().mapToDouble(each -> 1 / each.varianceAlone()).sum();
    return 1 / frame.varianceAlone() / weights;
  }

  private static double ownVariance(List<Frame> frames) {
    return frames.stream()
        .mapToDouble(frame -> square(weight(frame, frames) * frame.ownUncertaintyPx()))
        .sum();
  }

  private double uncertainty(double mean) {
    double shared =
        used.stream().mapToDouble(frame -> weight(frame, used) * frame.sharedUncertaintyPx()).sum();
    double enlarged = Math.max(1, birgeRatio(used, mean));
    return Math.sqrt(square(enlarged) * ownVariance(used) + square(shared));
  }

  private static double birgeRatio(List<Frame> frames, double mean) {
    if (frames.size() < 2) {
      return 0;
    }
    double sum =
        frames.stream()
            .mapToDouble(frame -> square((frame.diameterPx() - mean) / frame.ownUncertaintyPx()))
            .sum();
    return Math.sqrt(sum / (frames.size() - 1));
  }

  private Instant instant() {
    Instant first = used.get(0).takenAt();
    double millis = 0;
    for (Frame frame : used) {
      millis += weight(frame, used) * ChronoUnit.MILLIS.between(first, frame.takenAt());
    }
    return first.plusMillis(Math.round(millis)).truncatedTo(ChronoUnit.MILLIS);
  }

  private static double square(double value) {
    return value * value;
  }
}
