package org.limbspan.photo;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.limbspan.photo.file.PhotoFile;
import org.limbspan.photo.file.UnusableFile;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Sky;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Measures photographs again that an older method measured. The older results are kept; readings
 * are made of the newest.
 */
@Component
class PhotoRemeasuring {

  private static final Logger LOG = LoggerFactory.getLogger(PhotoRemeasuring.class);

  private final PhotoStore store;
  private final PhotoWriter writer;
  private final BracketBook book;
  private final OriginalFiles originals;
  private final Darkroom darkroom;
  private final Sky sky;
  private final Clock clock;

  PhotoRemeasuring(
      PhotoStore store,
      PhotoWriter writer,
      BracketBook book,
      OriginalFiles originals,
      Darkroom darkroom,
      Sky sky,
      Clock clock) {
    this.store = store;
    this.writer = writer;
    this.book = book;
    this.originals = originals;
    this.darkroom = darkroom;
    this.sky = sky;
    this.clock = clock;
  }

  /** How many photographs of a rig no method as new as that one has measured. */
  int behind(Rig rig, int method) {
    return store.behind(rig.id(), method).size();
  }

  /** Measures them and enters the readings that follow. */
  void measure(Rig rig, int method) {
    List<Photograph> behind = store.behind(rig.id(), method);
    for (Photograph photo : behind) {
      if (originals.isHeld(photo.sha256(), photo.format())) {
        measure(rig, photo, method);
      }
    }
    book.bringInLine(rig);
    LOG.info("rig {}: {} photographs measured by method {}", rig.slug(), behind.size(), method);
  }

  private void measure(Rig rig, Photograph photo, int method) {
    try {
      writer.add(rig, photo.id(), measured(rig, photo, method));
    } catch (IOException e) {
      // without its original nothing can be said of it: what was measured before stays
      LOG.error("the original {} of photograph {} cannot be read", photo.sha256(), photo.id(), e);
    }
  }

  private MeasuredByMethod measured(Rig rig, Photograph photo, int method) throws IOException {
    var file = originals.path(photo.sha256(), photo.format());
    ComputedMoon computed = ComputedMoon.of(sky, photo.takenAt(), rig.site());
    try {
      DiscFigures figures = darkroom.measure(file, PhotoFile.header(file), computed.options());
      return new MeasuredByMethod(method, now(), figures, null);
    } catch (RefusedPhoto refused) {
      return new MeasuredByMethod(method, now(), null, refused.reason());
    } catch (UnusableFile unusable) {
      return new MeasuredByMethod(method, now(), null, unusable.words());
    }
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }
}
