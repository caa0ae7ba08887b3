package org.limbspan.reading;

import java.util.List;
import java.util.Map;
import org.limbspan.rig.Predictions;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Gives readings out page by page. */
@Component
class ReadingPages {

  private final ReadingStore store;
  private final Rigs rigs;
  private final Sky sky;
  private final Predictions predictions;

  ReadingPages(ReadingStore store, Rigs rigs, Sky sky, Predictions predictions) {
    this.store = store;
    this.rigs = rigs;
    this.sky = sky;
    this.predictions = predictions;
  }

  @Transactional(readOnly = true)
  ReadingPage page(Rig rig, ReadingSpan span, int limit) {
    List<RecordedReading> found = store.page(rig.id(), span, limit + 1);
    Annotator annotator =
        new Annotator(new Standardiser(rigs.history(rig), sky::moonAt), predictions);
    List<Map<String, Object>> views =
        found.stream().limit(limit).map(annotator::annotate).map(ReadingView::of).toList();
    return found.size() <= limit
        ? new ReadingPage(views, null)
        : new ReadingPage(views, PageToken.of(found.get(limit - 1)));
  }
}
