package org.limbspan.photo.file;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * How a photograph was taken, as far as its file tells. The camera's place is not read.
 *
 * @param takenLocal the camera's clock when the shutter opened
 * @param offset that clock's offset from UTC
 * @param focalLengthMm above 0
 * @param exposureS above 0
 * @param iso above 0
 * @param fNumber above 0
 * @param camera maker and model
 */
public record Shot(
    @Nullable LocalDateTime takenLocal,
    @Nullable ZoneOffset offset,
    @Nullable Double focalLengthMm,
    @Nullable Double exposureS,
    @Nullable Integer iso,
    @Nullable Double fNumber,
    @Nullable String camera,
    Orientation orientation) {

  /** The file tells nothing. */
  public static final Shot UNTOLD =
      new Shot(null, null, null, null, null, null, null, Orientation.UPRIGHT);
}
