package org.limbspan.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealVector;
import org.hipparchus.random.RandomDataGenerator;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/**
 * What others measured, done again with simulated readings of the same kind and number: sizes by
 * the naked eye over many months (K. Krisciunas, Am. J. Phys. 78, 834, 2010; preprint
 * arXiv:1001.1432), photographs of one night at many altitudes (J. I. Zuluaga, J. C. Figueroa and
 * I. Ferrin, arXiv:1405.4580).
 */
final class PublishedExperiments {

  static final Site TEXAS = new Site(30.6, -96.3, 90);
  static final Site ANTIOQUIA = new Site(6.3, -75.6, 1500);

  /** Not told in the abstract: chosen so that a hand-held telephoto picture is as good as usual. */
  static final double PHOTOGRAPH_SD = 0.0012;

  static final int PHOTOGRAPHS = 100;
  static final double EYE_SD_ARCMIN = 0.7;
  static final int EYE_SIZES = 64;

  private final RandomDataGenerator random;

  PublishedExperiments(long seed) {
    random = new RandomDataGenerator(seed);
  }

  /** 64 sizes over 14 lunations, 0.7 arcmin each. */
  List<Observation> nakedEye() {
    Instant start = Instant.parse("2009-04-20T00:00:00Z");
    List<Observation> sizes = new ArrayList<>();
    while (sizes.size() < EYE_SIZES) {
      long minutes = random.nextLong(0, Math.round(14 * 29.53 * 1440));
      MoonSight sight = SkyFixture.sky().moonAt(start.plus(Duration.ofMinutes(minutes)), TEXAS);
      if (sight.altitudeDeg() > 15 && sight.illuminatedFraction() > 0.2) {
        double size = sight.horizontalDiameterArcmin() + random.nextNormal(0, EYE_SD_ARCMIN);
        sizes.add(reading(sight, size, EYE_SD_ARCMIN / size));
      }
    }
    return sizes;
  }

  /** One night, from a low Moon to a high one, hand-held. */
  List<Observation> oneNight() {
    Instant rise = Instant.parse("2014-04-14T23:10:00Z");
    List<Observation> photographs = new ArrayList<>();
    for (int i = 0; i < PHOTOGRAPHS; i++) {
      Instant at = rise.plus(Duration.ofSeconds(22_000L * i / PHOTOGRAPHS));
      MoonSight sight = SkyFixture.sky().moonAt(at, ANTIOQUIA);
      double size =
          sight.horizontalDiameterArcmin() * Math.exp(random.nextNormal(0, PHOTOGRAPH_SD));
      photographs.add(reading(sight, size, PHOTOGRAPH_SD));
    }
    return photographs;
  }

  private static Observation reading(MoonSight sight, double sizeArcmin, double relative) {
    return new Observation(
        sight.at(), Axis.HORIZONTAL, sizeArcmin, relative, sight, 0, Sighted.NONE);
  }

  /**
   * Half-amplitude over mean of one sinusoid of the best period from 26 to 29 d: the author's own
   * estimate, without evection and without the observer's parallax.
   */
  static double oneSinusoid(List<Observation> sizes) {
    double best = Double.POSITIVE_INFINITY;
    double eccentricity = 0;
    for (double period = 26; period <= 29; period += 0.02) {
      double[][] rows = new double[sizes.size()][];
      double[] y = new double[sizes.size()];
      for (int i = 0; i < y.length; i++) {
        double days =
            Duration.between(sizes.get(0).takenAt(), sizes.get(i).takenAt()).toMinutes() / 1440.0;
        double phase = 2 * Math.PI * days / period;
        rows[i] = new double[] {1, Math.cos(phase), Math.sin(phase)};
        y[i] = sizes.get(i).observedArcmin();
      }
      Array2DRowRealMatrix design = new Array2DRowRealMatrix(rows);
      RealVector fit = new QRDecomposition(design).getSolver().solve(new ArrayRealVector(y));
      double left = design.operate(fit).subtract(new ArrayRealVector(y)).getNorm();
      if (left < best) {
        best = left;
        eccentricity = Math.hypot(fit.getEntry(1), fit.getEntry(2)) / fit.getEntry(0);
      }
    }
    return eccentricity;
  }
}
