package org.limbspan.watch;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.limbspan.drift.Cause;
import org.limbspan.drift.LikelyCause;

/** Causes as a person would put them. */
final class CauseWords {

  private CauseWords() {}

  static String sentence(List<LikelyCause> causes) {
    if (causes.isEmpty()) {
      return "Nothing that is known here explains it.";
    }
    return causes.stream()
        .map(cause -> words(cause.cause()) + " (" + odds(cause.probability()) + ")")
        .collect(Collectors.joining("; ", "Likely causes in order: ", "."));
  }

  static String odds(double probability) {
    if (probability > 0.99) {
      return "more than 99 in 100";
    }
    if (probability < 0.01) {
      return "less than 1 in 100";
    }
    return String.format(Locale.ROOT, "%.0f in 100", probability * 100);
  }

  static String words(Cause cause) {
    return switch (cause) {
      case ZOOM_MOVED -> "the zoom or focus ring was touched, or the camera's image size changed";
      case ZOOM_CREEPING -> "the zoom or focus creeps, under the lens's weight or with the season";
      case SHARPNESS_LOST -> "worse seeing, haze, focus or a less steady hand";
      case CALIBRATION_WRONG -> "one calibration has a wrong distance, length or pixel count";
      case TARGET_WRONG -> "all calibrations share a wrong length or distance";
      case AXIS_MISLABELLED -> "diameters were logged under the wrong axis";
      case REFRACTION_WRONG -> "refraction other than computed, or another effect of altitude";
      case LOCAL_TIME_AS_UTC -> "local time was logged as UTC";
      case CLOCK_WRONG -> "the clock was off";
      case LONGITUDE_WRONG -> "the rig's longitude, or its sign, is wrong";
      case MEASURING_NOT_LINEAR -> "the measuring depends on the size: blooming or distortion";
      case NEAR_MOON -> "the Moon is near, as the near-Moon hypothesis has it";
      case CHANCE -> "readings that went astray together by chance";
    };
  }
}
