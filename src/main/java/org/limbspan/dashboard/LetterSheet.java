package org.limbspan.dashboard;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A letter about an interval of a rig's ledger, in words ready to print.
 *
 * @param months other intervals to write about: the rig's anomalistic months
 */
record LetterSheet(
    String slug,
    String name,
    String site,
    String interval,
    String judged,
    boolean invented,
    String from,
    String to,
    List<String> opening,
    @Nullable LetterPlot sizes,
    @Nullable LetterPlot ratios,
    List<NightsSheet.Line> pairs,
    List<LedgerSheet.Month> swings,
    List<LedgerSheet.Remark> remarks,
    List<Calibrated> calibrations,
    List<ConclusionsSheet.Question> questions,
    List<ConclusionsSheet.Figure> figures,
    List<Other> months) {

  record Calibrated(String taken, String reference, String measured, String scale) {}

  record Other(String words, String from, String to) {}
}
