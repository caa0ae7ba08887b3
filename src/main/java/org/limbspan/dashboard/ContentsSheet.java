package org.limbspan.dashboard;

import java.util.List;

/**
 * One page of the contents.
 *
 * @param rigCount of all pages
 * @param first number of the first line among all, from 1
 * @param page from 1
 */
record ContentsSheet(List<ContentsLine> lines, int rigCount, int first, int page, int pages) {

  ContentsSheet {
    lines = List.copyOf(lines);
  }

  /** Which of the rigs are here; empty where all are. */
  public String words() {
    return pages == 1
        ? ""
        : "Rigs %s to %s of %s, by their short names."
            .formatted(
                Typeset.whole(first),
                Typeset.whole(first + lines.size() - 1),
                Typeset.whole(rigCount));
  }
}
