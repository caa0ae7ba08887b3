package org.limbspan.cycle;

import java.util.List;

/**
 * One period of a harmonic model: its rate is {@code fixedPerDay} plus whole multiples of rates
 * that the readings are free to choose.
 *
 * @param fixedPerDay known part of the rate, turns per day
 * @param multiples how often each free rate goes into this line's rate
 * @param size expected amplitude of the line, relative, of unknown phase: each of cosine and sine
 *     then has a normal prior of variance size^2/2; infinite where nothing is known
 */
record Line(double fixedPerDay, List<Integer> multiples, double size) {

  Line {
    multiples = List.copyOf(multiples);
  }

  double priorPrecision() {
    return 2 / (size * size);
  }
}
