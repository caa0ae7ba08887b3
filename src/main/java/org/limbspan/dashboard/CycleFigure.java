package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
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
 * @param curve computed size while the Moon is up; only in a window narrow enough to see nights
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record CycleFigure(
    @JsonUnwrapped Figure figure,
    double[] t,
    double[] value,
    double[] half,
    double[] computed,
    List<String> axis,
    Ribbon ribbon,
    @Nullable Curve curve) {

  private static final Duration NIGHTS_SEEN = Duration.ofDays(75);

  record Ribbon(double[] t, double[] low, double[] high) {}

  /** A value is null while the Moon is below the horizon. */
  record Curve(double[] t, List<@Nullable Double> value) {}

  static CycleFigure of(LedgerFacts facts, FigureWindow window, List<Apsis> apsides, Sky sky) {
    List<Observation> seen =
        facts.observations().stream().filter(o -> window.holds(o.takenAt())).toList();
    int[] kept =
        Thinning.indexes(
            Columns.of(seen, o -> Figure.epochS(o.takenAt())),
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
        window.width().compareTo(NIGHTS_SEEN) > 0 ? null : curve(window, facts.site(), sky));
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

  private static Curve curve(FigureWindow window, Site site, Sky sky) {
    List<Instant> ticks = window.ticks(window.points());
    return new Curve(
        Columns.of(ticks, Figure::epochS),
        ticks.stream().map(at -> whileUp(sky.moonAt(at, site))).toList());
  }

  private static @Nullable Double whileUp(MoonSight sight) {
    return sight.apparentAltitudeDeg() < 0
        ? null
        : Columns.rounded(sight.horizontalDiameterArcmin());
  }
}
