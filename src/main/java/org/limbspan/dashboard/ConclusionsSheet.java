package org.limbspan.dashboard;

import java.util.List;

/**
 * The conclusions of a rig, in words ready to print.
 *
 * @param margin how much they rest on
 * @param leftOut what is not told where nobody's tables are asked; empty otherwise
 */
record ConclusionsSheet(
    boolean selfReliant,
    List<LedgerSheet.Dated> margin,
    List<Question> questions,
    List<Figure> figures,
    String leftOut,
    List<Hypothesis> hypotheses,
    List<String> support,
    List<NightsSheet.Sensitivity> sensitivity,
    List<Outlook> outlook) {

  record Question(String asked, String reply, List<String> words) {}

  /** One figure with what it rests on. */
  record Figure(String quantity, String value, String computed, String verdict, String basis) {}

  /**
   * @param ratio predicted at this latitude
   * @param likelihood its logarithm to base 10; empty where it is not told
   */
  record Hypothesis(String name, String says, String ratio, String likelihood) {}

  record Outlook(String wish, String more) {}
}
