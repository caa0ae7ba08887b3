package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SizeSpan;
import org.limbspan.sky.Sky;

/**
 * Observed diameters over the computed Moon, in arcminutes.
 *
 * @param half half length of the bars: k = 2
 * @param ribbon computed size on the horizon and at transit
 * @param arcs computed size while the Moon is up; only in a window narrow enough to see nights
 */
record CycleFigure(
    @JsonUnwrapped Figure figure,
    List<Double> t,
    List<Double> value,
    List<Double> half,
    List<Double> computed,
    List<String> axis,
    Ribbon ribbon,
    List<Arc> arcs) {

  private static final Duration NIGHTS_SEEN = Duration.ofDays(75);

  record Ribbon(List<Double> t, List<Double> low, List<Double> high) {}

  /** Computed size during one pass. */
  record Arc(List<Double> t, List<Double> value) {}

  static CycleFigure of(LedgerFacts facts, FigureWindow window, List<Apsis> apsides, Sky sky) {
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
        ribbon(window, facts.site(), sky),
        window.width().compareTo(NIGHTS_SEEN) > 0 ? List.of() : arcs(window, facts.site(), sky));
  }

  private static Ribbon ribbon(FigureWindow window, Site site, Sky sky) {
    List<Instant> ticks = window.ticks(window.points());
    List<SizeSpan> spans =
        ticks.stream().map(at -> SizeSpan.of(sky.moonAt(at, site), site)).toList();
    return new Ribbon(
        Columns.of(ticks, Figure::epochS),
        Columns.of(spans, SizeSpan::onHorizonArcmin),
        Columns.of(spans, SizeSpan::atTransitArcmin));
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
