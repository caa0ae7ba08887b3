package org.limbspan.dashboard;

import java.util.List;

/**
 * What became of files that were sent together.
 *
 * @param summary of all of them
 * @param lines one for each, in their order
 * @param readings that they are part of, by time
 */
record PhotoBatch(String summary, List<PhotoLine> lines, List<ReadingLine> readings) {

  PhotoBatch {
    lines = List.copyOf(lines);
    readings = List.copyOf(readings);
  }
}
