package org.limbspan.dashboard;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What became of one file that was sent, in words.
 *
 * @param place in the order in which the files were sent, from 0
 * @param outcome {@code measured}, {@code held} or {@code refused}
 * @param headline the outcome in a word or two
 * @param sentences figures or reasons
 * @param address of the page of its reading, or null
 */
record PhotoLine(
    int place,
    String file,
    String outcome,
    String headline,
    List<String> sentences,
    @Nullable String address) {

  PhotoLine {
    sentences = List.copyOf(sentences);
  }
}
