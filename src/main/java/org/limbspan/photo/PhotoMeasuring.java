package org.limbspan.photo;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.limbspan.limb.MeasureOptions;
import org.limbspan.photo.PhotoExaminer.Examined;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** Measures photographs beside what is held of their rig. */
@Component
class PhotoMeasuring {

  private final PhotoStore store;
  private final OriginalFiles originals;
  private final Darkroom darkroom;
  private final Rigs rigs;
  private final Sky sky;

  PhotoMeasuring(PhotoStore store, OriginalFiles originals, Darkroom darkroom, Rigs rigs, Sky sky) {
    this.store = store;
    this.originals = originals;
    this.darkroom = darkroom;
    this.rigs = rigs;
    this.sky = sky;
  }

  /** One request: its photographs also count for each other. */
  Session session(Rig rig, PhotoOptions options) {
    return new Session(
        rig,
        options,
        new FocalLengths(rigs.history(rig)::setupAt, store.focalLengths(rig.id()), rig.timeZone()));
  }

  /** The photographs of one request. */
  final class Session {

    private final Rig rig;
    private final PhotoOptions options;
    private final FocalLengths focalLengths;

    private Session(Rig rig, PhotoOptions options, FocalLengths focalLengths) {
      this.rig = rig;
      this.options = options;
      this.focalLengths = focalLengths;
    }

    PhotoAnswer measure(Examined examined) throws IOException, RefusedPhoto {
      Optional<PhotoStore.Held> held = store.newest(rig.id(), examined.sha256());
      if (held.isPresent() && options.conflict() == OnConflict.REFUSE) {
        PhotoAnswer answer = ofHeld(examined.photo().name(), held.get());
        if (options.purpose() != PhotoOptions.Purpose.TRY) {
          originals.keep(examined.photo().file(), examined.sha256(), examined.header().format());
        }
        return answer;
      }
      focalLengths.take(examined.instant().at(), examined.header().shot().focalLengthMm());
      ComputedMoon computed = ComputedMoon.of(sky, examined.instant().at(), rig.site());
      MeasureOptions expected = computed.options();
      DiscFigures figures = darkroom.measure(examined.photo().file(), examined.header(), expected);
      return PhotoAnswer.measured(
          examined.photo().name(),
          examined.instant().at(),
          new PhotoAnswer.Measured(options.axis(), figures),
          computed.remarks(figures));
    }

    private PhotoAnswer ofHeld(String name, PhotoStore.Held held) throws RefusedPhoto {
      Photograph photo = held.photo();
      if (held.withdrawn()) {
        throw new RefusedPhoto(
            "taken-back",
            "This photograph was entered before and taken back since. To enter it again, send it"
                + " with supersede=true.");
      }
      MeasuredByMethod newest = store.measurements(photo.id()).get(0);
      DiscFigures figures = newest.figures();
      if (figures == null) {
        throw new RefusedPhoto("refused-by-newer-method", String.valueOf(newest.refusedBecause()));
      }
      return PhotoAnswer.measured(
              name, photo.takenAt(), new PhotoAnswer.Measured(photo.axis(), figures), List.of())
          .with(new PhotoAnswer.Kept(photo.id(), true, null, null), List.of());
    }
  }
}
