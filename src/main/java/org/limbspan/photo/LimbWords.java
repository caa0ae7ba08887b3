package org.limbspan.photo;

import java.util.Locale;
import org.limbspan.limb.Measurement.Refused;

/** Says to an observer why a photograph gives no diameter, and what to do. */
final class LimbWords {

  private LimbWords() {}

  static String of(Refused refused) {
    String found = String.format(Locale.ROOT, "%.3g", refused.found());
    String expected = refused.expected();
    return switch (refused.reason()) {
      case NO_MOON ->
          "No Moon was found in the picture: expected %s. If it is there, let it be brighter than"
                  .formatted(expected)
              + " what is around it, and whole.";
      case CUT_BY_FRAME ->
          "The Moon is cut off by the frame: expected "
              + expected
              + ". Move the camera, not the zoom.";
      case TOO_SMALL ->
          "The Moon is too small, %s px: expected %s. Use a longer focal length, in a setup of its own."
              .formatted(found, expected);
      case CRESCENT_TOO_THIN ->
          "The crescent is too thin to tell its diameter (%s): expected %s."
              .formatted(found, expected);
      case TRAILED ->
          "The Moon is trailed by %s px: expected %s. Expose for a shorter time and keep the camera"
                  .formatted(found, expected)
              + " still, with a timer or a remote release.";
      case OUT_OF_FOCUS ->
          "The Moon is out of focus, its edge %s px wide: expected %s. Focus by hand on the limb."
              .formatted(found, expected);
      case OVEREXPOSED ->
          "The Moon is over-exposed (%s): expected %s. Expose for a shorter time."
              .formatted(found, expected);
      case LIMB_HIDDEN ->
          "Too little of the sunlit limb can be seen (%s): expected %s. Wait for the cloud, or move"
                  .formatted(found, expected)
              + " out from behind roof and branches.";
    };
  }
}
