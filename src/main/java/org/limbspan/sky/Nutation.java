package org.limbspan.sky;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.TimeScales;
import org.orekit.time.TimeVectorFunction;
import org.orekit.utils.Constants;
import org.orekit.utils.IERSConventions;

/**
 * Nutation (IAU 1980): the sums of its hundred terms at noon of each day, by polynomials of degree
 * seven between. The noons are the same whatever is asked for, and with them the answer, bit by
 * bit; only the days asked for are summed.
 *
 * <p>Accuracy: 0.00001 arcseconds against the sums; in the week about 1997-02-27, from which on the
 * equation of the equinoxes has two terms more, 0.003 arcseconds.
 */
final class Nutation {

  /** From 1890 to 2109; beyond, each instant is summed. */
  private static final int DAYS_FROM_J2000 = 40_000;

  private static final int FIRST = -3;
  private static final int LAST = 4;

  private final AbsoluteDate j2000;
  private final TimeVectorFunction sums;
  private final AtomicReferenceArray<double[]> noons =
      new AtomicReferenceArray<>(2 * DAYS_FROM_J2000 + 1);

  Nutation(IERSConventions conventions, TimeScales scales) {
    j2000 = scales.getJ2000Epoch();
    sums = conventions.getNutationFunction(scales);
  }

  /**
   * In longitude, in obliquity, and what the equation of the equinoxes has beside the first's part
   * along the equator; radians.
   */
  double[] at(AbsoluteDate date) {
    double days = date.durationFrom(j2000) / Constants.JULIAN_DAY;
    int before = (int) Math.floor(days);
    if (before + FIRST < -DAYS_FROM_J2000 || before + LAST > DAYS_FROM_J2000) {
      return sums.value(date);
    }
    double part = days - before;
    double longitude = 0;
    double obliquity = 0;
    double beside = 0;
    for (int node = FIRST; node <= LAST; node++) {
      double[] noon = noon(before + node);
      double weight = weight(node, part);
      longitude += weight * noon[0];
      obliquity += weight * noon[1];
      beside += weight * noon[2];
    }
    return new double[] {longitude, obliquity, beside};
  }

  private double[] noon(int day) {
    double[] known = noons.get(day + DAYS_FROM_J2000);
    if (known == null) {
      known = sums.value(new AbsoluteDate(j2000, day * Constants.JULIAN_DAY));
      noons.set(day + DAYS_FROM_J2000, known);
    }
    return known;
  }

  /** Lagrange's. */
  private static double weight(int node, double part) {
    double weight = 1;
    for (int other = FIRST; other <= LAST; other++) {
      if (other != node) {
        weight *= (part - other) / (node - other);
      }
    }
    return weight;
  }
}
