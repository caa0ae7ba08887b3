package org.limbspan.dashboard;

import java.util.List;

/**
 * The page of one reading.
 *
 * @param taken its head, such as {@code 29 May 2026, 21:10}
 * @param standing why it does not stand any more, or empty
 * @param facts what was observed and computed
 * @param sentences its observer's notes and what was remarked
 * @param frames its photographs by time
 * @param refused files that were taken beside them and gave no diameter
 */
record ReadingSheet(
    String slug,
    String rig,
    boolean invented,
    String taken,
    String zone,
    String standing,
    List<Fact> facts,
    List<String> sentences,
    List<FrameSheet> frames,
    List<PhotoLine> refused) {

  ReadingSheet {
    facts = List.copyOf(facts);
    sentences = List.copyOf(sentences);
    frames = List.copyOf(frames);
    refused = List.copyOf(refused);
  }

  /** A named value. */
  record Fact(String name, String words) {}
}
