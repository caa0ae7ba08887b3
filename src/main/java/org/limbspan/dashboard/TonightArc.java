package org.limbspan.dashboard;

import java.util.List;

/**
 * The Moon's way over the horizon as lines and words of a drawing, in its own units.
 *
 * @param path the way, as path data
 * @param ownLine the rig's own horizon where the Moon passes, as path data; empty if none is known
 * @param ground what the horizon of the drawing is, a sentence of its caption
 * @param summary the drawing in words
 */
record TonightArc(
    String path,
    String ownLine,
    String ground,
    List<Band> bands,
    List<Rule> altitudes,
    List<Rule> hours,
    List<Rule> directions,
    List<Rule> marks,
    List<Stroke> windows,
    String summary) {

  static final int WIDTH = 480;
  static final int HEIGHT = 300;
  static final int LEFT = 34;
  static final int RIGHT = WIDTH - 6;
  static final int TOP = 22;
  static final int FOOT = HEIGHT - 24;

  static final TonightArc NONE =
      new TonightArc(
          "", "", "", List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), "");

  /** A stretch of one light; the word stands in it where there is room. */
  record Band(String light, double x, double width, double middle, String word) {}

  /** A line at a place, with its word. */
  record Rule(double x, double y, String word) {}

  /** A part of the way that suits a reading. */
  record Stroke(String place, String path, double x, double y, String word) {}
}
