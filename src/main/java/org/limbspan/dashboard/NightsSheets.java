package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.LatitudeRatios;
import org.limbspan.cycle.NearMoon;
import org.limbspan.dashboard.NightsSheet.Hypothesis;
import org.limbspan.dashboard.NightsSheet.Latitude;
import org.limbspan.dashboard.NightsSheet.Line;
import org.limbspan.dashboard.NightsSheet.Sensitivity;
import org.limbspan.scale.Measured;
import org.limbspan.sky.Sky;
import org.limbspan.watch.HypothesesResult;
import org.limbspan.watch.NightsResult.Night;

/** Puts the night pairs and the two hypotheses into words. */
final class NightsSheets {

  private static final int SHOWN = 30;
  private static final double[] LATITUDES_DEG = {65, 51.5, 45, 36.5, 20, 0, -20, -33.9, -45};

  /** Beyond this the Moon over the equator hardly rises. */
  private static final double LAST_LATITUDE_DEG = 89;

  private NightsSheets() {}

  static NightsSheet of(LedgerFacts facts, Sky sky) {
    List<Night> nights = new ArrayList<>(facts.nights().nights());
    Collections.reverse(nights);
    List<Night> shown = nights.subList(0, Math.min(SHOWN, nights.size()));
    HypothesesResult hypotheses = facts.hypotheses();
    return new NightsSheet(
        lines(shown, new NearRatio(sky, facts.site()), facts.time()),
        nights.size() - shown.size(),
        verdict(hypotheses.log10BayesFactor()),
        hypotheses.hypotheses().stream().map(NightsSheets::hypothesis).toList(),
        hypotheses.sensitivity().stream().map(NightsSheets::sensitivity).toList(),
        hypotheses.remarks(),
        latitudes(facts.site().latitudeDeg()));
  }

  static List<Line> lines(List<Night> nights, NearRatio near, RigTime time) {
    List<String> observed =
        Aligned.column(
            nights.stream()
                .map(n -> Typeset.pair(new Measured(n.observedRatio(), n.uncertainty())))
                .toList());
    List<String> computed =
        Aligned.column(
            nights.stream()
                .map(n -> new Measured(n.predictedRatio(), n.uncertainty()).valueText())
                .toList());
    return IntStream.range(0, nights.size())
        .mapToObj(
            i -> {
              Night night = nights.get(i);
              return new Line(
                  time.minute(night.culminationAt()),
                  Typeset.places(night.lowAltitudeDeg(), 1),
                  Typeset.places(night.highAltitudeDeg(), 1),
                  Typeset.whole(night.readingCount()),
                  observed.get(i),
                  computed.get(i),
                  Typeset.places(near.of(night), 2),
                  MonthTable.verdict(night.verdict()));
            })
        .toList();
  }

  static List<String> verdict(@Nullable Double factor) {
    if (factor == null) {
      return List.of("There is nothing to compare yet.");
    }
    String favoured = factor > 0 ? "the orbiting Moon" : "the near Moon";
    return List.of(
        Math.abs(factor) < 1
            ? "The readings do not yet tell the two apart: "
                + Typeset.places(Math.pow(10, Math.abs(factor)), 1)
                + " to 1 for "
                + favoured
                + "."
            : "The readings speak for " + favoured + ", by " + odds(Math.abs(factor)) + " to 1.");
  }

  private static String odds(double log10) {
    return log10 < 6
        ? Typeset.whole(Math.round(Math.pow(10, log10)))
        : "10 to the power of " + Typeset.whole(Math.round(log10));
  }

  private static Hypothesis hypothesis(HypothesesResult.Hypothesis hypothesis) {
    boolean near = hypothesis.name().equals("near-moon");
    return new Hypothesis(
        near ? "near Moon" : "orbiting Moon",
        near
            ? Typeset.whole(Math.round(NearMoon.HEIGHT_KM))
                + " km above a flat ground: between rising and culmination the disc grows by a half"
                + " and more"
            : "as computed: between rising and culmination the disc grows by one or two percent",
        Typeset.places(hypothesis.logLikelihood() / Math.log(10), 1));
  }

  static Sensitivity sensitivity(HypothesesResult.Sensitivity under) {
    return new Sensitivity(
        under.height().equals("fixed") ? "3000 miles" : "free, 1000 to 20\u202f000 km",
        under.monthlyChange().equals("none") ? "none" : "free, any power of the computed",
        Typeset.places(under.log10BayesFactor(), 1));
  }

  private static List<Latitude> latitudes(double ownDeg) {
    double own = Math.max(-LAST_LATITUDE_DEG, Math.min(LAST_LATITUDE_DEG, ownDeg));
    return DoubleStream.concat(DoubleStream.of(LATITUDES_DEG), DoubleStream.of(own))
        .boxed()
        .distinct()
        .sorted(Collections.reverseOrder())
        .map(latitude -> latitude(latitude, latitude == own))
        .toList();
  }

  private static Latitude latitude(double latitudeDeg, boolean own) {
    LatitudeRatios ratios = LatitudeRatios.at(latitudeDeg, NearMoon.HEIGHT_KM);
    return new Latitude(
        Typeset.places(latitudeDeg, 1) + "\u00b0",
        Typeset.places(ratios.nearMoonRatio(), 2),
        Typeset.places(ratios.orbitingMoonRatio(), 4),
        Typeset.places(ratios.ruleOfThumbPercent(), 2),
        own);
  }
}
