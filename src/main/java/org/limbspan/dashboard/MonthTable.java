package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.limbspan.dashboard.LedgerSheet.Month;
import org.limbspan.scale.Measured;
import org.limbspan.watch.CycleResult;

/** The swing month by month, the latest first. */
final class MonthTable {

  private static final int PREDICTED_PLACES = 2;

  private MonthTable() {}

  static List<Month> of(List<CycleResult.Month> oldestFirst, RigTime time) {
    List<CycleResult.Month> months = new ArrayList<>(oldestFirst);
    Collections.reverse(months);
    List<String> observed = Aligned.column(months.stream().map(MonthTable::observed).toList());
    List<String> computed =
        Aligned.column(
            months.stream()
                .map(month -> Typeset.places(month.predictedSwingPercent(), PREDICTED_PLACES))
                .toList());
    return IntStream.range(0, months.size())
        .mapToObj(
            i ->
                new Month(
                    time.shortDay(months.get(i).perigeeAt()),
                    time.shortDay(months.get(i).apogeeAt()),
                    Typeset.whole(months.get(i).readingCount()),
                    observed.get(i),
                    computed.get(i),
                    verdict(months.get(i).verdict())))
        .toList();
  }

  private static String observed(CycleResult.Month month) {
    Double percent = month.observedSwingPercent();
    Double uncertainty = month.uncertaintyPercent();
    return percent == null || uncertainty == null
        ? ""
        : Typeset.pair(new Measured(percent, uncertainty));
  }

  static String verdict(String verdict) {
    return verdict.equals("too-few") ? "too few" : verdict;
  }
}
