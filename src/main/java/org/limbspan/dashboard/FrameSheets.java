package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.limbspan.photo.DiscFigures;
import org.limbspan.photo.KeptPhoto;
import org.limbspan.photo.MeasuredByMethod;
import org.limbspan.photo.PhotoAnswer;
import org.limbspan.photo.Photograph;

/** Puts photographs that are held into the words of a page. */
final class FrameSheets {

  private static final double LONGEST_FRACTION_S = 0.4;

  private final String slug;
  private final RigTime time;

  FrameSheets(String slug, RigTime time) {
    this.slug = slug;
    this.time = time;
  }

  FrameSheet of(int number, KeptPhoto kept) {
    Photograph photo = kept.photo();
    String base = "/api/rigs/" + slug + "/photos/" + photo.id();
    Optional<DiscFigures> figures = kept.newest();
    List<String> sentences = new ArrayList<>();
    sentences.add("Taken " + time.second(photo.takenAt()) + clock(photo) + exposure(photo) + ".");
    figures.ifPresent(its -> sentences.addAll(measured(its)));
    sentences.addAll(methods(kept.measurements()));
    return new FrameSheet(
        number,
        photo.fileName(),
        kept.isOriginalHeld() ? base + "/image" : "",
        figures.isPresent() ? base + "/overlay.svg" : "",
        kept.isOriginalHeld() ? base + "/original" : "",
        photo.widthPx(),
        photo.heightPx(),
        figures.map(FrameSheets::described).orElse("The photograph, without an outline."),
        kept.use() == PhotoAnswer.Use.SET_ASIDE ? "set aside" : "used",
        sentences);
  }

  private static List<String> measured(DiscFigures figures) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "Diameter "
            + PhotoWords.px(figures.horizontal())
            + " along the horizon, "
            + PhotoWords.px(figures.vertical())
            + " across it, from "
            + Typeset.places(figures.limbArcDeg(), 0)
            + "\u00b0 of the limb.");
    sentences.add(
        "Edge "
            + Typeset.places(figures.edgeFwhmPx(), 1)
            + " px wide; the air moved it by "
            + Typeset.places(figures.ripplePx(), 2)
            + " px"
            + (figures.clippedLimbShare() > 0.005
                ? "; over-exposed beside "
                    + Typeset.places(100 * figures.clippedLimbShare(), 0)
                    + " % of the limb"
                : "")
            + ".");
    return sentences;
  }

  private static String described(DiscFigures figures) {
    return "The Moon, "
        + Typeset.places(100 * figures.illuminatedFraction(), 0)
        + " % lit, under its fitted outline; "
        + Typeset.places(figures.limbArcDeg(), 0)
        + "\u00b0 of the limb are marked as used, "
        + Typeset.places(figures.setAsideDeg(), 0)
        + "\u00b0 as set aside.";
  }

  /** What older methods made of it; nothing as long as there is one. */
  private List<String> methods(List<MeasuredByMethod> measurements) {
    if (measurements.size() < 2) {
      return List.of();
    }
    return measurements.stream()
        .map(
            each ->
                "By method "
                    + each.method()
                    + ", "
                    + time.day(each.measuredAt())
                    + ": "
                    + (each.figures() == null
                        ? "refused. " + each.refusedBecause()
                        : PhotoWords.px(each.figures().horizontal())
                            + " along the horizon, "
                            + PhotoWords.px(each.figures().vertical())
                            + " across it."))
        .toList();
  }

  private static String clock(Photograph photo) {
    return switch (photo.clock()) {
      case "sender" -> " as its sender says";
      case "time-zone" -> " by the camera\u2019s clock, taken to be in the rig\u2019s time zone";
      default -> " by the camera\u2019s clock";
    };
  }

  private static String exposure(Photograph photo) {
    List<String> told = new ArrayList<>();
    if (photo.exposureS() != null) {
      told.add(seconds(photo.exposureS()));
    }
    if (photo.iso() != null) {
      told.add("ISO " + photo.iso());
    }
    if (photo.fNumber() != null) {
      told.add("f/" + plain(photo.fNumber()));
    }
    if (photo.focalLengthMm() != null) {
      told.add(plain(photo.focalLengthMm()) + " mm");
    }
    return told.isEmpty() ? "" : "; " + String.join(", ", told);
  }

  private static String seconds(double value) {
    return value < LONGEST_FRACTION_S ? "1/" + Math.round(1 / value) + " s" : plain(value) + " s";
  }

  private static String plain(double value) {
    return value == Math.rint(value)
        ? Long.toString((long) value)
        : String.format(Locale.ROOT, "%.1f", value);
  }
}
