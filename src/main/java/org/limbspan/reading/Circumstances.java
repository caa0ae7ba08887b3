package org.limbspan.reading;

import org.jspecify.annotations.Nullable;

/**
 * What an observer may add to a diameter. Altitude and azimuth are as sighted, never used in place
 * of the computed ones.
 *
 * @param altitudeDeg -90 to 92: a sighting of the zenith may err beyond it
 * @param azimuthDeg from north through east, 0 to 360
 * @param exposureS exposure time in seconds, greater than 0
 * @param iso film speed (ISO 12232), greater than 0
 * @param fNumber focal length over aperture, greater than 0
 * @param sky clouds, haze, seeing in the observer's words
 */
public record Circumstances(
    @Nullable Double altitudeDeg,
    @Nullable Double azimuthDeg,
    @Nullable Double exposureS,
    @Nullable Integer iso,
    @Nullable Double fNumber,
    @Nullable String sky,
    @Nullable String note) {

  /** Nothing was added. */
  public static final Circumstances NONE =
      new Circumstances(null, null, null, null, null, null, null);
}
