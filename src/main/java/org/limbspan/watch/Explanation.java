package org.limbspan.watch;

/**
 * An alert in words, a sentence or two to each question.
 *
 * @param what what changed
 * @param howMuch by how much, with its standard uncertainty
 * @param since since when, with its interval
 * @param howSure how sure that is
 * @param shownBy which readings show it
 * @param likelyCauses what may stand behind it, in order
 * @param whatToDo what to do next
 */
public record Explanation(
    String what,
    String howMuch,
    String since,
    String howSure,
    String shownBy,
    String likelyCauses,
    String whatToDo) {

  /** All of it as one paragraph. */
  public String paragraph() {
    return String.join(" ", what, howMuch, since, howSure, shownBy, likelyCauses, whatToDo);
  }
}
