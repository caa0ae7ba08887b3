package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.OwnCurve;
import org.limbspan.dashboard.Drawing.Axis;
import org.limbspan.dashboard.Drawing.Layer;
import org.limbspan.dashboard.Drawing.Look;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Sky;
import org.limbspan.watch.CycleResult;

/** The figures of the cycle page beside the one over time. */
final class CycleDrawings {

  private static final Duration REACH = Duration.ofDays(16);
  private static final double HALF_MONTH_D = 14.5;
  private static final double DAY_S = 86400;

  /** Mean radius of the Moon; IAU Working Group on Cartographic Coordinates, 2015. */
  private static final double MOON_RADIUS_KM = 1737.4;

  private static final int LINE_STEPS = 60;

  private final LedgerFacts facts;
  private final Sky sky;

  CycleDrawings(LedgerFacts facts, Sky sky) {
    this.facts = facts;
    this.sky = sky;
  }

  /** All months on one, by days from the nearest perigee of the computed Moon. */
  Drawing folded() {
    NavigableSet<Instant> perigees = perigees();
    return folded(o -> daysFrom(perigees, o.takenAt()), Observation::predictedArcmin, "computed");
  }

  /** The same by the readings alone: their own perigee, their own period. */
  Drawing folded(OwnCurve own) {
    return folded(
        o -> own.daysFromPerigee(o.takenAt()),
        o ->
            own.diameterArcmin(o.takenAt(), o.sight().altitudeDeg())
                * o.predictedArcmin()
                / o.sight().horizontalDiameterArcmin(),
        "their own curve");
  }

  private Drawing folded(
      ToDoubleFunction<Observation> day, ToDoubleFunction<Observation> expected, String words) {
    List<Observation> all = facts.observations();
    double[] days = all.stream().mapToDouble(day).toArray();
    int[] kept = Cells.indexes(all.size(), i -> days[i], i -> all.get(i).observedArcmin());
    List<Layer> layers = new ArrayList<>();
    layers.addAll(envelope(days, all.stream().mapToDouble(expected).toArray(), words));
    layers.addAll(readings(kept, i -> days[i], i -> all.get(i).observedArcmin()));
    return Drawing.of(
            Axis.number("days from perigee", "").reaching(-HALF_MONTH_D, HALF_MONTH_D),
            Axis.number("diameter", "\u2032"),
            layers)
        .in(facts.time())
        .thinnedIf(kept.length < all.size());
  }

  /** Between which sizes the expected Moon of the same readings lies, day by day. */
  private static List<Layer> envelope(double[] days, double[] expected, String words) {
    List<Double> at = new ArrayList<>();
    List<Double> least = new ArrayList<>();
    List<Double> greatest = new ArrayList<>();
    for (int day = -15; day <= 15; day++) {
      int middle = day;
      double[] its =
          IntStream.range(0, days.length)
              .filter(i -> Math.abs(days[i] - middle) <= 0.5)
              .mapToDouble(i -> expected[i])
              .toArray();
      if (its.length > 0) {
        at.add((double) day);
        least.add(IntStream.range(0, its.length).mapToDouble(i -> its[i]).min().orElseThrow());
        greatest.add(IntStream.range(0, its.length).mapToDouble(i -> its[i]).max().orElseThrow());
      }
    }
    return List.of(
        new Layer("least " + words, Look.BROKEN, at, least, null),
        new Layer("greatest " + words, Look.BROKEN, at, greatest, null));
  }

  /** Observed size against the computed distance from the site, and the law of 1/d. */
  Drawing law() {
    List<Observation> all = facts.observations();
    int[] kept =
        Cells.indexes(
            all.size(),
            i -> all.get(i).sight().topocentricDistanceKm(),
            i -> unflattened(all.get(i)));
    List<Layer> layers = new ArrayList<>();
    lawLine(all).forEach(layers::add);
    layers.addAll(
        readings(
            kept,
            i -> all.get(i).sight().topocentricDistanceKm() / 1000,
            i -> unflattened(all.get(i))));
    return Drawing.of(
            Axis.number("distance, thousand km", ""), Axis.number("diameter", "\u2032"), layers)
        .in(facts.time())
        .thinnedIf(kept.length < all.size());
  }

  private static List<Layer> lawLine(List<Observation> all) {
    if (all.isEmpty()) {
      return List.of();
    }
    double[] km = all.stream().mapToDouble(o -> o.sight().topocentricDistanceKm()).toArray();
    double first = IntStream.range(0, km.length).mapToDouble(i -> km[i]).min().orElseThrow();
    double last = IntStream.range(0, km.length).mapToDouble(i -> km[i]).max().orElseThrow();
    List<Double> x = new ArrayList<>();
    List<Double> y = new ArrayList<>();
    for (int i = 0; i <= LINE_STEPS; i++) {
      double distance = first + (last - first) * i / LINE_STEPS;
      x.add(distance / 1000);
      y.add(60 * Math.toDegrees(2 * Math.asin(MOON_RADIUS_KM / distance)));
    }
    return List.of(new Layer("size times distance constant", Look.LINE, x, y, null));
  }

  private static double unflattened(Observation o) {
    return o.observedArcmin() * o.sight().horizontalDiameterArcmin() / o.predictedArcmin();
  }

  /** The swing of each month. */
  Drawing months() {
    List<CycleResult.Month> told =
        facts.cycle().months().stream()
            .filter(month -> month.observedSwingPercent() != null)
            .sorted(Comparator.comparing(CycleResult.Month::perigeeAt))
            .toList();
    List<Double> x = Columns.of(told, month -> Figure.epochS(month.perigeeAt()));
    return Drawing.of(
            Axis.time("perigee"),
            Axis.number("swing", " %"),
            List.of(
                new Layer(
                    "computed",
                    Look.COMPUTED,
                    x,
                    Columns.of(told, CycleResult.Month::predictedSwingPercent),
                    null),
                new Layer(
                    "observed",
                    Look.OBSERVED,
                    x,
                    Columns.of(told, month -> known(month.observedSwingPercent())),
                    Columns.of(told, month -> 2 * known(month.uncertaintyPercent())))))
        .in(facts.time());
  }

  private static double known(@Nullable Double value) {
    return value == null ? 0 : value;
  }

  private List<Layer> readings(int[] kept, IntToDoubleFunction x, IntToDoubleFunction y) {
    List<Integer> own = new ArrayList<>();
    List<Integer> inferred = new ArrayList<>();
    for (int i : kept) {
      (facts.inferred().contains(facts.observations().get(i)) ? inferred : own).add(i);
    }
    List<Layer> layers = new ArrayList<>();
    if (!inferred.isEmpty()) {
      layers.add(layer("observed, scale not independent", Look.INFERRED, inferred, x, y));
    }
    layers.add(layer("observed", Look.OBSERVED, own, x, y));
    return layers;
  }

  private Layer layer(
      String name, Look look, List<Integer> indexes, IntToDoubleFunction x, IntToDoubleFunction y) {
    return new Layer(
        name,
        look,
        Columns.of(indexes, x::applyAsDouble),
        Columns.of(indexes, y::applyAsDouble),
        Columns.of(
            indexes,
            i -> {
              Observation o = facts.observations().get(i);
              return 2 * o.relativeUncertainty() * o.observedArcmin();
            }));
  }

  private NavigableSet<Instant> perigees() {
    NavigableSet<Instant> perigees = new TreeSet<>();
    if (facts.observations().isEmpty()) {
      return perigees;
    }
    FigureWindow window =
        new FigureWindow(
                facts.firstAt().orElseThrow().minus(REACH),
                facts.lastAt().orElseThrow().plus(REACH),
                1)
            .within(sky.ephemerisFrom(), sky.ephemerisTo());
    for (Apsis apsis : sky.apsides(window.from(), window.to())) {
      if (apsis.kind() == Apsis.Kind.PERIGEE) {
        perigees.add(apsis.at());
      }
    }
    return perigees;
  }

  private static double daysFrom(NavigableSet<Instant> perigees, Instant at) {
    Instant before = perigees.floor(at);
    Instant after = perigees.higher(at);
    double since = before == null ? Double.POSITIVE_INFINITY : days(before, at);
    double until = after == null ? Double.POSITIVE_INFINITY : days(at, after);
    return since <= until ? since : -until;
  }

  private static double days(Instant from, Instant to) {
    return Duration.between(from, to).toMillis() / (1000 * DAY_S);
  }
}
