package org.limbspan.dashboard;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The ledger page of a rig, in words ready to print. Figures fetch their numbers themselves. */
record LedgerSheet(
    Title title,
    List<Remark> remarks,
    Cycle cycle,
    Residuals residuals,
    Nights nights,
    List<Month> months,
    List<Estimate> estimates,
    Log log) {

  /**
   * The head of the page.
   *
   * @param margin the dates that stand beside the name
   * @param quiet what is said where there is nothing to remark
   * @param curl how to send readings, as it can be pasted
   */
  record Title(
      String slug,
      String name,
      String site,
      String standing,
      String judged,
      String quiet,
      String timeZone,
      List<String> margin,
      boolean invented,
      boolean empty,
      @Nullable String note,
      String curl) {}

  /**
   * An alert, as it stands in the ledger.
   *
   * @param answer what the owner answered, in words
   * @param example a date and time as the answer takes it
   */
  record Remark(
      int number,
      String id,
      String headline,
      String since,
      String interval,
      String state,
      List<String> sentences,
      String advice,
      @Nullable String answer,
      boolean answerable,
      List<Choice> causes,
      String example) {}

  /** A cause to choose as an answer; without odds where nothing speaks for it. */
  record Choice(String name, String words, String odds) {}

  record Cycle(String words, String figureSummary, List<Dated> apsides) {}

  record Dated(String name, String words) {}

  record Residuals(String words, String figureSummary, List<Dated> margin) {}

  record Nights(String words, String figureSummary, List<Dated> margin, boolean any) {}

  record Month(
      String perigee,
      String apogee,
      String readings,
      String observed,
      String computed,
      String verdict) {}

  record Estimate(String quantity, String observed, String expected, String basis) {}

  record Log(String caption, String margin, List<Line> lines) {}

  record Line(
      String instant,
      String taken,
      String observed,
      String computed,
      String residual,
      String altitude,
      String axis,
      String note) {}
}
