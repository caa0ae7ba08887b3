package org.limbspan.dashboard;

import java.util.List;

/**
 * The page of the notices of a rig.
 *
 * @param mail whether mail can be chosen
 */
record NoticeSheet(boolean mail, List<Line> recipients, List<Choice> choices) {

  /**
   * A recipient.
   *
   * @param channel and whether it is paused, in words
   * @param told what it is told, and when not
   * @param sentences what became of its notices
   * @param form with its wishes
   */
  record Line(
      String id,
      String address,
      String channel,
      String told,
      List<String> sentences,
      boolean failing,
      boolean paused,
      NoticeForm form) {}

  /** A kind of notice that can be wanted. */
  record Choice(String label, String words) {}
}
