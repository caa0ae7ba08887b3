package org.limbspan.photo;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.function.Function;
import org.limbspan.photo.file.PhotoFile;
import org.limbspan.photo.file.PhotoHeader;
import org.limbspan.photo.file.Shot;
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
      ShotInstant instant = instant(header.shot(), rig.timeZone(), options);
      return new Examined(
          photo, OriginalFiles.sha256(photo.file()), Files.size(photo.file()), header, instant);
    } catch (UnusableFile unusable) {
      throw RefusedPhoto.of(unusable);
    }
  }

  private ShotInstant instant(Shot shot, ZoneId zone, PhotoOptions options) throws RefusedPhoto {
    try {
      return possible(ShotInstant.of(options.takenAt(), shot, zone), zone);
    } catch (RefusedPhoto refused) {
      if (options.takenAtOtherwise() == null) {
        throw refused;
      }
      return possible(ShotInstant.of(options.takenAtOtherwise(), shot, zone), zone);
    }
  }

  private ShotInstant possible(ShotInstant instant, ZoneId zone) throws RefusedPhoto {
    Instant at = instant.at();
    Instant now = clock.instant();
    if (at.isAfter(now.plus(1, ChronoUnit.DAYS))) {
      throw refused(
          "time-ahead",
          "The photograph says that it was taken at %s, which is to come: expected an instant at most a day ahead of now, %s.",
          zone,
          at,
          now.truncatedTo(ChronoUnit.SECONDS));
    }
    if (at.isBefore(sky.ephemerisFrom()) || !at.isBefore(sky.ephemerisTo())) {
      throw refused(
          "time-out-of-reach",
          "The photograph says that it was taken at %s: expected an instant from %s to before %s, the reach of the ephemeris.",
          zone,
          at,
          sky.ephemerisFrom(),
          sky.ephemerisTo());
    }
    return instant;
  }

  private static RefusedPhoto refused(String code, String reason, ZoneId zone, Instant... told) {
    return new RefusedPhoto(
            code,
            words(reason, told, Instant::toString)
                + " Set the camera's clock, and send it again with takenAt.")
        .onPages(words(reason, told, new PageTime(zone)::minute) + " Set the camera's clock.");
  }

  private static String words(String reason, Instant[] told, Function<Instant, String> instant) {
    return reason.formatted(Arrays.stream(told).map(instant).toArray());
  }
}
