package org.limbspan.drift;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A change that the history shows, with everything that words need.
 *
 * @param kind the best explanation
 * @param setup number of the setup in which it began
 * @param onsetAt best estimate of its beginning
 * @param onsetFrom lower end of the interval that holds the beginning with 95 percent
 * @param onsetTo upper end of that interval
 * @param until when it ended, if it did: a drift that stopped, a clock that was put right
 * @param evidenceAt instant of the first reading with which the evidence was enough
 * @param sizePercent how much: of a step its height; of a drift its rate in 30 days; of a scatter
 *     growth the growth of the standard deviation, so that 200 is threefold scatter; of a
 *     calibration the deviation of its plate scale; of an altitude trend its effect on a disc at 10
 *     degrees of apparent altitude; of a clock the root mean square of the residuals that it makes;
 *     of swing and ratio the departure of the slope from 1. Positive where discs are too large
 * @param uncertaintyPercent standard uncertainty of {@code sizePercent}
 * @param probability that this is no chance, 0 to 1, all explanations taken together
 * @param likelyCauses the most likely first; their sum is at most 1
 * @param evidence instants of the readings that show it, oldest first
 */
public record Finding(
    AlertKind kind,
    int setup,
    Instant onsetAt,
    Instant onsetFrom,
    Instant onsetTo,
    Optional<Instant> until,
    Instant evidenceAt,
    double sizePercent,
    double uncertaintyPercent,
    double probability,
    List<LikelyCause> likelyCauses,
    List<Instant> evidence,
    Figures figures) {

  public Finding {
    likelyCauses = List.copyOf(likelyCauses);
    evidence = List.copyOf(evidence);
    if (onsetAt.isBefore(onsetFrom) || onsetTo.isBefore(onsetAt)) {
      throw new IllegalArgumentException(
          "onsetAt " + onsetAt + ": expected from " + onsetFrom + " to " + onsetTo);
    }
  }

  /** The same, known to have ended. */
  Finding endedAt(Instant end) {
    return new Finding(
        kind,
        setup,
        onsetAt,
        onsetFrom,
        onsetTo,
        Optional.of(end),
        evidenceAt,
        sizePercent,
        uncertaintyPercent,
        probability,
        likelyCauses,
        evidence,
        figures);
  }
}
