package org.limbspan.dashboard;

import java.util.List;
import org.limbspan.platform.InvalidInput;
import org.limbspan.reading.Readings;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Gathers the lines of the contents, so many rigs at a time. */
@Component
class ContentsReader {

  static final int LINES = 25;

  private final Rigs rigs;
  private final Readings readings;
  private final Watch watch;

  ContentsReader(Rigs rigs, Readings readings, Watch watch) {
    this.rigs = rigs;
    this.readings = readings;
    this.watch = watch;
  }

  /**
   * One page of the contents.
   *
   * @param number from 1
   * @throws InvalidInput if there are fewer pages
   */
  @Transactional(readOnly = true)
  ContentsSheet read(int number) {
    List<Rig> all = rigs.all();
    int pages = Math.max(1, (all.size() + LINES - 1) / LINES);
    if (number < 1 || number > pages) {
      throw InvalidInput.inQuery("page", number, "1 to " + pages);
    }
    int first = LINES * (number - 1);
    List<ContentsLine> lines =
        all.subList(first, Math.min(first + LINES, all.size())).stream()
            .map(rig -> ContentsLine.of(rig, readings.extent(rig.id()), watch.alerts(rig)))
            .toList();
    return new ContentsSheet(lines, all.size(), first + 1, number, pages);
  }
}
