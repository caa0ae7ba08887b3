package org.limbspan.dashboard;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The ledger page of a rig, in words ready to print. Figures fetch their numbers themselves. */
record LedgerSheet(
    Title title,
    List<Remark> remarks,
    Chapter cycle,
    Chapter residuals,
    Chapter nights,
    List<Month> months,
    List<Month> earlierMonths,
    List<Estimate> estimates,
    Log log) {

  /**
   * The head of the page.
   *
   * @param margin the dates that stand beside the name
   * @param quiet what is said where there is nothing to remark
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
      @Nullable String note) {}

  /**
   * An alert, as it stands in the ledger.
   *
   * @param evidence what the picture of it shows
   * @param replies what the owner answered, in words
   * @param example a date and time as the answer takes it
   */
  record Remark(
      int number,
      String id,
      String kind,
      String headline,
      String since,
      String interval,
      String state,
      List<String> sentences,
      String evidence,
      List<Cause> causes,
      String advice,
      List<String> replies,
      boolean waiting,
      String example) {}

  /** A likely cause with its odds, such as {@code 93 in 100}. */
  record Cause(String words, String odds) {}

  /**
   * A section with a figure.
   *
   * @param margin what stands beside it
   * @param figureSummary the figure in words; empty where there is nothing to draw
   */
  record Chapter(List<String> words, String figureSummary, List<Dated> margin) {

    public boolean isDrawn() {
      return !figureSummary.isEmpty();
    }
  }

  record Dated(String name, String words) {}

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
      long id,
      String instant,
      String taken,
      String observed,
      String computed,
      String residual,
      String altitude,
      String axis,
      String note) {}
}
