package org.limbspan.cycle;

import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How many nights tell an effect, from the noise of the rig's own nights.
 *
 * <p>One night gives an estimate with standard uncertainty u; n of them together u / sqrt(n). An
 * effect e is told where the estimate lies three uncertainties from none, as {@link Verdict} asks;
 * the chance of that is the normal distribution's at e sqrt(n) / u - 3, the far side left out.
 * Nights that differ in what they can tell count by their information, the inverse variance.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.2, with a known standard
 * deviation.
 */
public final class NightsNeeded {

  private static final double LIMIT_SIGMAS = 3;
  private static final NormalDistribution NORMAL = new NormalDistribution();

  private NightsNeeded() {}

  /**
   * Uncertainty of the growth within one ordinary night of these, as a share of the growth computed
   * for it: 0.5 where one night alone would have it to a half.
   *
   * @return infinite where the nights tell nothing at all, or there are none
   */
  public static double ofOneNight(List<NightPair> pairs) {
    double information =
        pairs.stream()
            .mapToDouble(
                pair ->
                    Math.pow(
                        Math.log(pair.predictedRatio()) * pair.observedRatio() / pair.uncertainty(),
                        2))
            .average()
            .orElse(0);
    return 1 / Math.sqrt(information);
  }

  /**
   * The same for a night not yet photographed.
   *
   * @param relativeUncertainty standard uncertainty of one reading over its size, above 0
   * @param growth of the disc between the low and the high reading, ln, not 0
   */
  public static double ofOneNight(double relativeUncertainty, double growth) {
    require("relativeUncertainty", relativeUncertainty);
    require("growth", Math.abs(growth));
    return Math.sqrt(2) * relativeUncertainty / Math.abs(growth);
  }

  /**
   * The nights in all that tell {@code effect} from none with the chance {@code power}.
   *
   * @param uncertaintyOfOne of one night, above 0, in the unit of the effect
   * @param effect above 0
   * @param power above 0, below 1
   */
  public static long toTell(double uncertaintyOfOne, double effect, double power) {
    require("uncertaintyOfOne", uncertaintyOfOne);
    require("effect", effect);
    if (!(power > 0 && power < 1)) {
      throw new IllegalArgumentException("power " + power + ": expected above 0 and below 1");
    }
    double sigmas = LIMIT_SIGMAS + NORMAL.inverseCumulativeProbability(power);
    return Math.max(
        1, (long) Math.ceil(Math.pow(Math.max(0, sigmas) * uncertaintyOfOne / effect, 2) - 1e-9));
  }

  /** The chance that so many nights tell it; see {@link #toTell}. */
  public static double chance(long nights, double uncertaintyOfOne, double effect) {
    require("uncertaintyOfOne", uncertaintyOfOne);
    require("effect", effect);
    return NORMAL.cumulativeProbability(
        effect * Math.sqrt((double) nights) / uncertaintyOfOne - LIMIT_SIGMAS);
  }

  private static void require(String name, double value) {
    if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(name + " " + value + ": expected above 0, and finite");
    }
  }
}
