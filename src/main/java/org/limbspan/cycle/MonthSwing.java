package org.limbspan.cycle;

import java.time.Instant;
import java.util.Optional;

/**
 * One anomalistic month: how much bigger the disc at its perigee is than at its apogee.
 *
 * @param perigeeAt begin of the month (included)
 * @param apogeeAt the apogee in it
 * @param nextPerigeeAt end of the month (excluded)
 * @param observedSwingPercent from the month's readings alone, 100 (D/d - 1); empty where the
 *     readings cannot carry one at all
 * @param predictedSwingPercent the same from the distances of the two apsides, seen from the
 *     Earth's centre
 * @param slope observed over predicted swing, in logarithms
 */
public record MonthSwing(
    Instant perigeeAt,
    Instant apogeeAt,
    Instant nextPerigeeAt,
    int readingCount,
    Optional<Estimate> observedSwingPercent,
    double predictedSwingPercent,
    Optional<Estimate> slope,
    Verdict verdict) {}
