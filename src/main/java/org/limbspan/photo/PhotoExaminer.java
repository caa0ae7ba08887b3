package org.limbspan.photo;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.limbspan.photo.file.PhotoFile;
import org.limbspan.photo.file.PhotoHeader;
import org.limbspan.photo.file.UnusableFile;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** Looks at a file without decoding its picture: what it is, when it was taken. */
@Component
class PhotoExaminer {

  private final Sky sky;
  private final Clock clock;

  PhotoExaminer(Sky sky, Clock clock) {
    this.sky = sky;
    this.clock = clock;
  }

  /** A file that may be measured. */
  record Examined(
      IncomingPhoto photo,
      String sha256,
      long byteCount,
      PhotoHeader header,
      ShotInstant instant) {}

  Examined examine(Rig rig, IncomingPhoto photo, PhotoOptions options)
      throws IOException, RefusedPhoto {
    try {
      PhotoHeader header = PhotoFile.header(photo.file());
      ShotInstant instant = ShotInstant.of(options.takenAt(), header.shot(), rig.timeZone());
      requirePossible(instant.at());
      return new Examined(
          photo, OriginalFiles.sha256(photo.file()), Files.size(photo.file()), header, instant);
    } catch (UnusableFile unusable) {
      throw RefusedPhoto.of(unusable);
    }
  }

  private void requirePossible(Instant at) throws RefusedPhoto {
    Instant now = clock.instant();
    if (at.isAfter(now.plus(1, ChronoUnit.DAYS))) {
      throw new RefusedPhoto(
          "time-ahead",
          "The photograph says that it was taken at %s, which is to come: expected an instant at most a day ahead of now, %s. Set the camera's clock, and send it again with takenAt."
              .formatted(at, now.truncatedTo(ChronoUnit.SECONDS)));
    }
    if (at.isBefore(sky.ephemerisFrom()) || !at.isBefore(sky.ephemerisTo())) {
      throw new RefusedPhoto(
          "time-out-of-reach",
          "The photograph says that it was taken at %s: expected an instant from %s to before %s, the reach of the ephemeris. Set the camera's clock, and send it again with takenAt."
              .formatted(at, sky.ephemerisFrom(), sky.ephemerisTo()));
    }
  }
}
