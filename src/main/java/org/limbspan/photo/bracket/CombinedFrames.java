package org.limbspan.photo.bracket;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The frames of one bracket as one reading.
 *
 * @param takenAt mean instant of the frames used, with the weights of the diameter, to the
 *     millisecond: the Moon's size changes by up to 0.4 percent an hour as it rises
 * @param uncertaintyPx standard uncertainty
 * @param used by time
 * @param setAside frames that disagree with the others
 * @param birgeRatio scatter of the frames used over what their own uncertainties let expect; 0 for
 *     one frame
 */
public record CombinedFrames(
    Instant takenAt,
    double diameterPx,
    double uncertaintyPx,
    List<Frame> used,
    List<SetAside> setAside,
    double birgeRatio,
    Optional<ExposureTrend> trend) {

  public CombinedFrames {
    used = List.copyOf(used);
    setAside = List.copyOf(setAside);
  }

  /** The reading of a bracket, which has one frame or more. */
  public static CombinedFrames of(List<Frame> bracket) {
    return new FrameCombiner(bracket).combined();
  }
}
