package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.PhotoOptions;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;

/**
 * The form that sends photographs of the Moon, as it was filled in, without its files.
 *
 * @param takenAt of photographs whose files tell no time; may be empty
 * @param tried whether the photographs are only measured
 */
record PhotoForm(@Nullable String takenAt, boolean tried) {

  static final String FILES = "photo";
  static final String TAKEN_AT = "takenAt";

  /** What the field of the time is called. */
  static final String TAKEN_AT_NAME = "When they were taken, if the files do not say";

  static final PhotoForm EMPTY = new PhotoForm(null, false);

  /**
   * What is wrong with it, by the name of the field; empty if nothing is.
   *
   * @param from the first instant of which the Moon can be computed
   */
  Map<String, String> complaints(RigTime time, Instant from, Instant now) {
    Map<String, String> complaints = new LinkedHashMap<>();
    typed().complain(complaints, TAKEN_AT, time, from, now);
    if (complaints.isEmpty() && RigTime.isDay(text(takenAt))) {
      complaints.put(
          TAKEN_AT,
          "Expected the time of day too, such as "
              + text(takenAt)
              + " 21:40: the Moon changes its size within hours.");
    }
    return complaints;
  }

  TypedPhotoTime typed() {
    return new TypedPhotoTime(takenAt);
  }

  /** Of a form without complaints. */
  PhotoOptions options(RigTime time) {
    Optional<Instant> otherwise = typed().instant(time);
    return new PhotoOptions(
        null,
        otherwise.orElse(null),
        Axis.HORIZONTAL,
        tried ? PhotoOptions.Purpose.TRY : PhotoOptions.Purpose.KEEP,
        OnConflict.REFUSE);
  }
}
