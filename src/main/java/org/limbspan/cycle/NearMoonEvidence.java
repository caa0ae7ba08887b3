package org.limbspan.cycle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;
import org.limbspan.sky.Site;

/**
 * What readings say of the near Moon at one height or at any.
 *
 * <p>The evidence at any height is that over ln of the height, uniform from 1000 to 20,000 km. The
 * peak is looked for in some passes first, then in all. Where readings abound the evidence about it
 * is a bell, and integrated with Gauss and Hermite's points; else with Gauss and Legendre's over as
 * much of it as counts.
 */
final class NearMoonEvidence {

  private static final double LEAST = Math.log(1000);
  private static final double MOST = Math.log(20_000);
  private static final int SCAN = 12;
  private static final int SEARCHED = 600;
  private static final int ABUNDANT = 1000;
  private static final double REACH = 8;
  private static final int LEGENDRE_POINTS = 24;
  private static final int FEWER_POINTS = 9;
  private static final int HERMITE_POINTS = 5;
  private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();

  private final Series series;
  private final Site site;
  private final NearMoonAssumptions.MonthlyChange change;
  private final PassLikelihood withoutMonth;
  private final PassLikelihood likelihood;
  private final double[] lnSize;
  private final double[] ground2;

  /**
   * @param likelihood of the same readings, whatever it explains
   */
  NearMoonEvidence(
      Series series,
      Site site,
      NearMoonAssumptions.MonthlyChange change,
      PassLikelihood likelihood) {
    this.series = series;
    this.site = site;
    this.change = change;
    this.withoutMonth = likelihood;
    this.likelihood =
        switch (change) {
          case NONE -> likelihood;
          case FREE -> likelihood.with(month(series));
        };
    lnSize = series.lnUnrefracted();
    ground2 =
        series.observations().stream()
            .mapToDouble(o -> NearMoon.groundKm(o.sight(), site))
            .map(km -> km * km)
            .toArray();
  }

  private static double[] month(Series series) {
    return series.observations().stream()
        .mapToDouble(o -> -Math.log(o.sight().geocentricDistanceKm()))
        .toArray();
  }

  /**
   * The best height and what it gives.
   *
   * @param logEvidence there, or over all heights
   */
  record AtHeight(double heightKm, PassLikelihood.Outcome outcome, double logEvidence) {}

  AtHeight at(double heightKm) {
    PassLikelihood.Outcome outcome = likelihood.evaluate(seen(heightKm));
    return new AtHeight(heightKm, outcome, outcome.logEvidence());
  }

  /** What is to be explained if the Moon stands so high. */
  private double[] seen(double heightKm) {
    double[] y = lnSize.clone();
    for (int i = 0; i < y.length; i++) {
      y[i] += Math.log(ground2[i] + heightKm * heightKm) / 2;
    }
    return y;
  }

  AtHeight atAnyHeight() {
    Peak peak = peak();
    AtHeight best = at(Math.exp(peak.at()));
    double ratio = integral(peak) / (MOST - LEAST);
    return new AtHeight(best.heightKm(), best.outcome(), best.logEvidence() + Math.log(ratio));
  }

  /**
   * What is known of the near Moon at one height.
   *
   * @param logWeight of the height in the integral over all
   */
  record KnownHeight(double heightKm, double logWeight, KnownLikelihood likelihood) {}

  /**
   * What is known of it at the best height and at those that the integral takes.
   *
   * @param nodes none where the height is given
   */
  record Known(KnownHeight best, List<KnownHeight> nodes) {}

  Known knownAt(double heightKm) {
    return new Known(known(Math.log(heightKm), 0), List.of());
  }

  Known knownAtAnyHeight() {
    Peak peak = peak();
    List<KnownHeight> nodes = new ArrayList<>();
    nodes(peak).forEach(node -> nodes.add(known(node.at(), node.logWeight())));
    return new Known(known(peak.at(), 0), nodes);
  }

  private KnownHeight known(double logHeight, double logWeight) {
    double heightKm = Math.exp(logHeight);
    return new KnownHeight(heightKm, logWeight, likelihood.know(seen(heightKm)));
  }

  /** The same with what is known of other readings. */
  AtHeight with(Known known) {
    PassLikelihood.Outcome best = with(known.best());
    if (known.nodes().isEmpty()) {
      return new AtHeight(known.best().heightKm(), best, best.logEvidence());
    }
    double[] logs =
        known.nodes().stream()
            .mapToDouble(node -> with(node).logEvidence() + node.logWeight())
            .toArray();
    double most = Arrays.stream(logs).max().orElseThrow();
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - most);
    }
    return new AtHeight(known.best().heightKm(), best, most + Math.log(sum / (MOST - LEAST)));
  }

  private PassLikelihood.Outcome with(KnownHeight known) {
    PassLikelihood here =
        switch (change) {
          case NONE -> likelihood;
          case FREE -> withoutMonth.with(month(series), known.likelihood().centres());
        };
    return here.evaluate(seen(known.heightKm()), known.likelihood());
  }

  /** The height of most evidence, in logarithms, and how far from it half a unit is lost. */
  private record Peak(double at, double value, double spread) {}

  private Peak peak() {
    if (series.size() <= 2 * SEARCHED) {
      return peakFromNothing();
    }
    Series some = series.thinned(SEARCHED);
    Peak rough =
        new NearMoonEvidence(some, site, change, PassLikelihood.of(some)).peakFromNothing();
    double narrower = rough.spread() * Math.sqrt((double) some.size() / series.size());
    return peakNear(rough.at(), REACH * rough.spread(), narrower);
  }

  private Peak peakFromNothing() {
    double step = (MOST - LEAST) / SCAN;
    double best = LEAST;
    double most = Double.NEGATIVE_INFINITY;
    for (int k = 0; k <= SCAN; k++) {
      double value = log(LEAST + k * step);
      if (value > most) {
        most = value;
        best = LEAST + k * step;
      }
    }
    return peakNear(best, step, 1e-3);
  }

  /** The evidence has one peak; it may lie at an end of the heights. */
  private Peak peakNear(double start, double reach, double expectedSpread) {
    double from = Math.max(LEAST, start - reach);
    double to = Math.min(MOST, start + reach);
    if (to == MOST && isHigher(MOST, MOST - expectedSpread / 10)) {
      return peakAt(MOST, log(MOST), expectedSpread);
    }
    if (from == LEAST && isHigher(LEAST, LEAST + expectedSpread / 10)) {
      return peakAt(LEAST, log(LEAST), expectedSpread);
    }
    UnivariatePointValuePair peak =
        new BrentOptimizer(1e-7, expectedSpread / 10)
            .optimize(
                new MaxEval(100),
                new UnivariateObjectiveFunction(this::log),
                GoalType.MAXIMIZE,
                new SearchInterval(from, to, start));
    return peakAt(peak.getPoint(), peak.getValue(), expectedSpread);
  }

  private boolean isHigher(double logHeight, double other) {
    return log(logHeight) > log(other);
  }

  private Peak peakAt(double logHeight, double value, double expectedSpread) {
    double step = expectedSpread / 2;
    double fall = value - log(aside(logHeight, step));
    while (step < MOST - LEAST && fall < 0.3) {
      step *= 2;
      fall = value - log(aside(logHeight, step));
    }
    // a few readings of one altitude fit any height alike: nothing falls, but for rounding
    double spread = fall > 0 ? step * Math.sqrt(0.5 / fall) : MOST - LEAST;
    return new Peak(logHeight, value, spread);
  }

  private static double aside(double logHeight, double step) {
    return logHeight + step < MOST ? logHeight + step : logHeight - step;
  }

  /** Of the evidence over that at the peak, d ln(height). */
  private double integral(Peak peak) {
    return nodes(peak).stream()
        .mapToDouble(node -> Math.exp(log(node.at()) - peak.value() + node.logWeight()))
        .sum();
  }

  /** A logarithm of a height and the share that the evidence there has in the integral. */
  private record Node(double at, double logWeight) {}

  private List<Node> nodes(Peak peak) {
    double above = MOST - peak.at();
    double below = peak.at() - LEAST;
    List<Node> nodes = new ArrayList<>();
    if (series.size() >= ABUNDANT && Math.min(above, below) > REACH * peak.spread()) {
      double unit = Math.sqrt(2) * peak.spread();
      GaussIntegrator rule = RULES.hermite(HERMITE_POINTS);
      for (int k = 0; k < rule.getNumberOfPoints(); k++) {
        double t = rule.getPoint(k);
        nodes.add(new Node(peak.at() + unit * t, Math.log(unit * rule.getWeight(k)) + t * t));
      }
      return nodes;
    }
    double reach = REACH * peak.spread();
    GaussIntegrator rule =
        RULES.legendre(
            series.size() >= ABUNDANT ? FEWER_POINTS : LEGENDRE_POINTS,
            peak.at() - Math.min(below, reach),
            peak.at() + Math.min(above, reach));
    for (int k = 0; k < rule.getNumberOfPoints(); k++) {
      nodes.add(new Node(rule.getPoint(k), Math.log(rule.getWeight(k))));
    }
    return nodes;
  }

  private double log(double logHeight) {
    return at(Math.exp(logHeight)).logEvidence();
  }
}
