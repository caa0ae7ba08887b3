package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.stream.IntStream;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Apsis;

/**
 * Residuals in percent.
 *
 * @param half half length of the bars: k = 2
 * @param levels the level of each stretch between setups and judged steps
 */
record ResidualsFigure(
    @JsonUnwrapped Figure figure,
    List<Double> t,
    List<Double> value,
    List<Double> half,
    List<Level> levels) {

  record Level(double from, double to, double percent) {}

  static ResidualsFigure of(LedgerFacts facts, FigureWindow window, List<Apsis> apsides) {
    List<Observation> seen =
        facts.observations().stream().filter(o -> window.holds(o.takenAt())).toList();
    int[] kept =
        Thinning.indexes(
            Columns.epochS(seen, Observation::takenAt),
            i -> seen.get(i).residual(),
            window.points());
    List<Observation> drawn = IntStream.of(kept).mapToObj(seen::get).toList();
    boolean thinned = drawn.size() < seen.size();
    return new ResidualsFigure(
        Figure.of(facts, apsides, thinned, thinned),
        Columns.of(drawn, o -> Figure.epochS(o.takenAt())),
        Columns.of(drawn, o -> 100 * o.residual()),
        Columns.of(drawn, o -> 200 * o.relativeUncertainty()),
        ResidualLevels.of(facts).stream()
            .map(l -> new Level(Figure.epochS(l.from()), Figure.epochS(l.to()), l.percent()))
            .toList());
  }
}
