package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Apsis;
import org.limbspan.watch.NightsResult.Night;
import org.limbspan.watch.NightsResult.Summary;

/**
 * Night ratios, high size over low size.
 *
 * @param half half length of the bars: k = 2
 * @param mean all pairs together
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record NightsFigure(
    @JsonUnwrapped Figure figure,
    List<Double> t,
    List<Double> value,
    List<Double> half,
    List<Double> predicted,
    @Nullable Mean mean) {

  record Mean(double observed, double half, double predicted) {}

  static NightsFigure of(LedgerFacts facts, FigureWindow window, List<Apsis> apsides) {
    List<Night> seen =
        facts.nights().nights().stream().filter(n -> window.holds(n.culminationAt())).toList();
    int[] kept =
        Thinning.indexes(
            Columns.epochS(seen, Night::culminationAt),
            i -> seen.get(i).observedRatio(),
            window.points());
    List<Night> drawn = IntStream.of(kept).mapToObj(seen::get).toList();
    boolean thinned = drawn.size() < seen.size();
    return new NightsFigure(
        Figure.of(facts, apsides, thinned, thinned),
        Columns.of(drawn, n -> Figure.epochS(n.culminationAt())),
        Columns.of(drawn, Night::observedRatio),
        Columns.of(drawn, n -> 2 * n.uncertainty()),
        Columns.of(drawn, Night::predictedRatio),
        mean(facts.nights().summary()));
  }

  private static @Nullable Mean mean(Summary summary) {
    Double observed = summary.meanObservedRatio();
    Double predicted = summary.meanPredictedRatio();
    Double uncertainty = summary.meanRatioUncertainty();
    return observed == null || predicted == null || uncertainty == null
        ? null
        : new Mean(observed, 2 * uncertainty, predicted);
  }
}
