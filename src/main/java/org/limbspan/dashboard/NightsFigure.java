package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Sky;
import org.limbspan.watch.NightsResult.Night;
import org.limbspan.watch.NightsResult.Summary;

/**
 * Night ratios, high size over low size.
 *
 * @param half half length of the bars: k = 2
 * @param near ratio of a near Moon between the same two readings
 * @param mean all pairs together
 * @param running mean of each pair and all before it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record NightsFigure(
    @JsonUnwrapped Figure figure,
    List<Double> t,
    List<Double> value,
    List<Double> half,
    List<Double> predicted,
    List<Double> near,
    List<String> verdict,
    @Nullable Mean mean,
    Running running) {

  record Mean(double observed, double half, double predicted) {}

  record Running(List<Double> value, List<Double> low, List<Double> high, List<Double> predicted) {}

  static NightsFigure of(LedgerFacts facts, FigureWindow window, List<Apsis> apsides, Sky sky) {
    List<RunningMean.At> running = RunningMean.of(facts.nights().nights());
    List<RunningMean.At> seen =
        running.stream().filter(at -> window.holds(at.night().culminationAt())).toList();
    int[] kept =
        Thinning.indexes(
            Columns.epochS(seen, at -> at.night().culminationAt()),
            i -> seen.get(i).night().observedRatio(),
            window.points());
    List<RunningMean.At> drawn = IntStream.of(kept).mapToObj(seen::get).toList();
    List<Night> nights = drawn.stream().map(RunningMean.At::night).toList();
    boolean thinned = drawn.size() < seen.size();
    NearRatio near = new NearRatio(sky, facts.site());
    return new NightsFigure(
        Figure.of(facts, apsides, thinned, thinned),
        Columns.of(nights, n -> Figure.epochS(n.culminationAt())),
        Columns.of(nights, Night::observedRatio),
        Columns.of(nights, n -> 2 * n.uncertainty()),
        Columns.of(nights, Night::predictedRatio),
        Columns.of(nights, near::of),
        nights.stream().map(n -> MonthTable.verdict(n.verdict())).toList(),
        mean(facts.nights().summary()),
        new Running(
            Columns.of(drawn, RunningMean.At::observed),
            Columns.of(drawn, at -> at.observed() - 2 * at.uncertainty()),
            Columns.of(drawn, at -> at.observed() + 2 * at.uncertainty()),
            Columns.of(drawn, RunningMean.At::predicted)));
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
