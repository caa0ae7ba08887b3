package org.limbspan.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.limbspan.limb.SheetMeasurement.Refused;

/** Says of a calibration photograph why it gives no length, or what is to be known of it. */
final class SheetWords {

  private static final double SURE = 3;

  private SheetWords() {}

  static String of(Refused refused) {
    String found = String.format(Locale.ROOT, "%.4g", refused.found());
    String expected = refused.expected();
    return switch (refused.reason()) {
      case NO_SHEET ->
          "No sheet was found in the picture: expected "
              + expected
              + ". A white sheet on a dark board, without anything as bright beside it, serves best.";
      case CUT_BY_FRAME ->
          "The sheet is cut off by the frame: expected "
              + expected
              + ". Move the camera, not the zoom.";
      case TOO_SMALL ->
          "The tall side has only "
              + found
              + " px: expected "
              + expected
              + ". Set the sheet up nearer and measure the distance anew.";
      case OUT_OF_FOCUS ->
          "The sheet is out of focus, its edges "
              + found
              + " px wide: expected "
              + expected
              + ". Where the lens cannot focus so near, set the sheet up farther away.";
      case EDGE_DISTURBED ->
          "An edge of the sheet is covered, bent or too weak: expected "
              + expected
              + ". Stretch the sheet flat, on a ground darker than it all round.";
      case TILTED ->
          "The tall side is "
              + found
              + " times the other one: expected "
              + expected
              + ". The sheet leans or is turned, or it is another sheet: set it up square to the"
              + " line of sight.";
    };
  }

  /** What the owner should know before trusting the calibration. */
  static List<String> remarks(SheetFigures figures) {
    if (figures.shortening().isEmpty()) {
      return List.of(
          "Whether the sheet leans was not checked, for want of the length of its other side. A lean"
              + " of 3 degrees makes the tall side look 0.14 percent too short.");
    }
    double lack = figures.shortening().getAsDouble();
    return Math.abs(lack) > SURE * figures.proportionUncertainty()
        ? List.of(lean(lack))
        : List.of();
  }

  private static String lean(double lack) {
    double degrees = Math.toDegrees(Math.acos(1 - Math.abs(lack)));
    return lack > 0
        ? String.format(
            Locale.ROOT,
            "The tall side looks %.2f percent too short against the other one, as if the sheet"
                + " leaned by %.1f degrees; the uncertainty was enlarged by that much. Set it"
                + " upright and photograph it again.",
            100 * lack,
            degrees)
        : String.format(
            Locale.ROOT,
            "The other side looks %.2f percent too short, as if the sheet were turned about its tall"
                + " side by %.1f degrees; the tall side does not suffer from that.",
            -100 * lack,
            degrees);
  }

  /** Kept with the calibration. */
  static String note(String file, String sha256, SheetFigures figures) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        String.format(
            Locale.ROOT,
            "From the photograph %s (SHA-256 %s): tall side %.2f px, other side %.2f px, edges %.1f"
                + " px wide.",
            file,
            sha256,
            figures.tallSidePx(),
            figures.otherSidePx(),
            figures.edgeFwhmPx()));
    if (figures.shortening().isPresent()) {
      sentences.addAll(remarks(figures));
    }
    return String.join(" ", sentences);
  }
}
