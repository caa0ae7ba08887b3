package org.limbspan.dashboard;

import java.util.List;

/**
 * A photograph of a reading.
 *
 * @param image address of its picture; empty if its file is not held
 * @param overlay address of the drawing over it; empty if the newest method refused it
 * @param original address of its file; empty if that is not held
 * @param widthPx of the upright picture
 * @param heightPx of the upright picture
 * @param described what is to be seen, for those who do not see it
 * @param standing {@code used} or {@code set aside}, in words
 * @param sentences its figures, how it was taken, and what other methods made of it
 */
record FrameSheet(
    int number,
    String file,
    String image,
    String overlay,
    String original,
    int widthPx,
    int heightPx,
    String described,
    String standing,
    List<String> sentences) {

  FrameSheet {
    sentences = List.copyOf(sentences);
  }
}
