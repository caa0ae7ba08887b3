package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.OwnCurve;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SizeSpan;
import org.limbspan.sky.Sky;

/**
 * Observed diameters over the computed Moon, in arcminutes.
 *
 * @param half half length of the bars: k = 2
 * @param inferred places in the lists of the readings whose scale is taken from the computed Moon
 * @param ribbon computed size on the horizon and at transit
 * @param own the same as the readings alone draw it; absent unless asked for, or if they cannot
 * @param arcs computed size while the Moon is up; only in a window narrow enough to see nights
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record CycleFigure(
    @JsonUnwrapped Figure figure,
    List<Double> t,
    List<Double> value,
    List<Double> half,
    List<Double> computed,
    List<String> axis,
    List<Integer> inferred,
    Ribbon ribbon,
    @Nullable Ribbon own,
    List<Arc> arcs) {

  private static final int HOURS_APART_IN_A_MONTH = 24;
  private static final Duration NIGHTS_SEEN = Duration.ofDays(75);

  record Ribbon(List<Double> t, List<Double> low, List<Double> high) {}

  /** Computed size during one pass. */
  record Arc(List<Double> t, List<Double> value) {}

  static CycleFigure of(
      LedgerFacts facts,
      FigureWindow window,
      List<Apsis> apsides,
      Sky sky,
      Optional<OwnCurve> own) {
    List<MoonSight> sights =
        window.ticks(ticks(window)).stream().map(at -> sky.moonAt(at, facts.site())).toList();
    List<Observation> seen =
        facts.observations().stream().filter(o -> window.holds(o.takenAt())).toList();
    int[] kept =
        Thinning.indexes(
            Columns.epochS(seen, Observation::takenAt),
            i -> seen.get(i).observedArcmin(),
            window.points());
    List<Observation> drawn = IntStream.of(kept).mapToObj(seen::get).toList();
    return new CycleFigure(
        Figure.of(facts, apsides, drawn.size() < seen.size(), true),
        Columns.of(drawn, o -> Figure.epochS(o.takenAt())),
        Columns.of(drawn, Observation::observedArcmin),
        Columns.of(drawn, o -> 2 * o.relativeUncertainty() * o.observedArcmin()),
        Columns.of(drawn, Observation::predictedArcmin),
        drawn.stream().map(o -> o.axis().label()).toList(),
        IntStream.range(0, drawn.size())
            .filter(i -> facts.inferred().contains(drawn.get(i)))
            .boxed()
            .toList(),
        ribbon(sights, facts.site()),
        own.map(curve -> ownRibbon(sights, facts.site(), curve)).orElse(null),
        window.width().compareTo(NIGHTS_SEEN) > 0 ? List.of() : arcs(window, facts.site(), sky));
  }

  /** Enough for the screen and for the month. */
  private static int ticks(FigureWindow window) {
    long forTheMonth = window.width().toHours() / HOURS_APART_IN_A_MONTH;
    return (int) Math.max(window.points(), Math.min(FigureWindow.MOST_POINTS, forTheMonth));
  }

  private static Ribbon ribbon(List<MoonSight> sights, Site site) {
    List<SizeSpan> spans = sights.stream().map(sight -> SizeSpan.of(sight, site)).toList();
    return new Ribbon(
        Columns.of(sights, sight -> Figure.epochS(sight.at())),
        Columns.of(spans, SizeSpan::onHorizonArcmin),
        Columns.of(spans, SizeSpan::atTransitArcmin));
  }

  private static Ribbon ownRibbon(List<MoonSight> sights, Site site, OwnCurve own) {
    return new Ribbon(
        Columns.of(sights, sight -> Figure.epochS(sight.at())),
        Columns.of(sights, sight -> own.diameterArcmin(sight.at(), 0)),
        Columns.of(
            sights,
            sight ->
                own.diameterArcmin(
                    sight.at(), 90 - Math.abs(site.latitudeDeg() - sight.sublunarLatitudeDeg()))));
  }

  private static List<Arc> arcs(FigureWindow window, Site site, Sky sky) {
    List<Arc> arcs = new ArrayList<>();
    List<MoonSight> up = new ArrayList<>();
    for (Instant at : window.ticks(window.points())) {
      MoonSight sight = sky.moonAt(at, site);
      if (sight.apparentAltitudeDeg() >= 0) {
        up.add(sight);
      } else {
        add(arcs, up);
        up.clear();
      }
    }
    add(arcs, up);
    return arcs;
  }

  private static void add(List<Arc> arcs, List<MoonSight> up) {
    if (!up.isEmpty()) {
      arcs.add(
          new Arc(
              Columns.of(up, sight -> Figure.epochS(sight.at())),
              Columns.of(up, MoonSight::horizontalDiameterArcmin)));
    }
  }
}
