package org.limbspan.cycle;

import java.util.Optional;
import java.util.function.DoubleSupplier;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;

/**
 * The most likely noise factor and night part of a regression by restricted likelihood, held by
 * weak priors so that a dozen readings are enough to begin with.
 *
 * <p>Priors: ln of the factor around 0 as a Cauchy distribution of scale 0.3 (owners state
 * uncertainties to some 30 percent, now and then far worse); night over reading part as half a
 * Cauchy of scale 0.5.
 */
final class NoiseSearch {

  private static final double FACTOR_SCALE = 0.3;
  private static final double NIGHT_SCALE = 0.5;
  private static final double MOST_SHARE = 0.9;
  private static final double ACCURACY = 1e-3;

  /** Half the width of a search about a share that is nearly known. */
  private static final double NEAR = 0.03;

  private static final double LEAST_LOG_FACTOR = Math.log(0.05);
  private static final double MOST_LOG_FACTOR = Math.log(2000);

  private final NightSums sums;
  private final double typical;

  NoiseSearch(Rows rows, double[] weights) {
    this.sums = new NightSums(rows, weights);
    this.typical = rows.typicalStated();
  }

  /** Empty where the columns cannot be told apart. */
  Optional<Noise> find(NightPart part) {
    return find(part, () -> maximum(this::likelihoodAtShare, 0, MOST_SHARE, ACCURACY).at());
  }

  /** The same, begun from what came out before for nearly the same rows. */
  Optional<Noise> find(NightPart part, Noise before) {
    return find(part, () -> shareNear(share(before)));
  }

  private double shareNear(double before) {
    double from = Math.max(0, before - NEAR);
    double to = Math.min(MOST_SHARE, before + NEAR);
    double best = maximum(this::likelihoodAtShare, from, to, ACCURACY).at();
    boolean held =
        (from == 0 || best > from + NEAR / 10) && (to == MOST_SHARE || best < to - NEAR / 10);
    return held ? best : maximum(this::likelihoodAtShare, 0, MOST_SHARE, ACCURACY).at();
  }

  private double share(Noise noise) {
    double ratio = noise.nightSd() / (typical * noise.statedFactor());
    return ratio / (1 + ratio);
  }

  private Optional<Noise> find(NightPart part, DoubleSupplier shareOfNight) {
    if (part == NightPart.ABSORBED) {
      return bestFactor(sums.equations(0)).map(f -> new Noise(Math.exp(f.at()), 0));
    }
    if (bestFactor(sums.equations(0)).isEmpty()) {
      return Optional.empty();
    }
    double ratio = ratio(shareOfNight.getAsDouble());
    return bestFactor(sums.equations(ratio * typical))
        .map(f -> new Noise(Math.exp(f.at()), ratio * typical * Math.exp(f.at())));
  }

  static Whitening whitening(Rows rows, double[] weights, double factor, double nightSd) {
    double[] root = rows.sd(factor);
    for (int i = 0; i < root.length; i++) {
      root[i] = Math.sqrt(weights[i]) / root[i];
    }
    return new Whitening(root, rows.nights(), nightSd, rows.levels());
  }

  private double likelihoodAtShare(double share) {
    double ratio = ratio(share);
    return bestFactor(sums.equations(ratio * typical))
        .map(best -> best.value() - cauchy(ratio / NIGHT_SCALE))
        .orElse(Double.NEGATIVE_INFINITY);
  }

  private static double ratio(double share) {
    return share / (1 - share);
  }

  private Optional<Peak> bestFactor(NormalEquations equations) {
    if (equations.solve(1).isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        maximum(log -> posterior(equations, log), LEAST_LOG_FACTOR, MOST_LOG_FACTOR, 1e-4));
  }

  private static double posterior(NormalEquations equations, double logFactor) {
    return equations.logRestrictedLikelihood(Math.exp(logFactor))
        - cauchy(logFactor / FACTOR_SCALE);
  }

  private static double cauchy(double deviation) {
    return Math.log1p(deviation * deviation);
  }

  private record Peak(double at, double value) {}

  private static Peak maximum(
      UnivariateFunction function, double from, double to, double accuracy) {
    UnivariatePointValuePair best =
        new BrentOptimizer(1e-6, accuracy)
            .optimize(
                new MaxEval(200),
                new UnivariateObjectiveFunction(function),
                GoalType.MAXIMIZE,
                new SearchInterval(from, to));
    return new Peak(best.getPoint(), best.getValue());
  }
}
