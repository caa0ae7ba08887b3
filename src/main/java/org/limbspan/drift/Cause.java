package org.limbspan.drift;

/** What may stand behind a finding. */
public enum Cause {
  /** Zoom or focus ring touched, another lens position, or another image size in the camera. */
  ZOOM_MOVED("zoom-moved"),
  /** Zoom or focus creeping, for instance under the lens's own weight or with the season. */
  ZOOM_CREEPING("zoom-creeping"),
  /** Seeing, haze, focus, or a hand less steady than before. */
  SHARPNESS_LOST("sharpness-lost"),
  /** One calibration with a wrong distance, length or pixel count. */
  CALIBRATION_WRONG("calibration-wrong"),
  /** All calibrations share a wrong length or distance. */
  TARGET_WRONG("target-wrong"),
  /** Vertical diameters logged as horizontal, or the other way round. */
  AXIS_MISLABELLED("axis-mislabelled"),
  /** Refraction other than computed, or another effect that goes with the altitude. */
  REFRACTION_WRONG("refraction-wrong"),
  /** The rig's local time logged as UTC. */
  LOCAL_TIME_AS_UTC("local-time-as-utc"),
  /** A clock that is off by some other amount. */
  CLOCK_WRONG("clock-wrong"),
  /** The sign of the longitude, or the site, is wrong. */
  LONGITUDE_WRONG("longitude-wrong"),
  /** Sizes that depend on themselves: blooming, a threshold or a lens that distorts. */
  MEASURING_NOT_LINEAR("measuring-not-linear"),
  /** The Moon is near, some thousands of kilometres above the ground. */
  NEAR_MOON("near-moon"),
  /** Nothing: readings that went astray together. */
  CHANCE("chance");

  private final String label;

  Cause(String label) {
    this.label = label;
  }

  /** The word used in answers, such as {@code zoom-moved}. */
  public String label() {
    return label;
  }
}
