package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.DiscFigures;
import org.limbspan.photo.PhotoAnswer;
import org.limbspan.photo.PhotoAnswer.Kept;
import org.limbspan.photo.PhotoAnswer.Refusal;
import org.limbspan.photo.PhotoAnswer.Use;
import org.limbspan.scale.Measured;
import org.limbspan.sky.Axis;

/** Says what became of photographs. */
final class PhotoWords {

  private final String slug;
  private final RigTime time;
  private final TypedPhotoTime typed;

  /**
   * Of photographs of one form.
   *
   * @param typed the time that its files were to have where they tell none
   */
  PhotoWords(String slug, RigTime time, TypedPhotoTime typed) {
    this.slug = slug;
    this.time = time;
    this.typed = typed;
  }

  List<PhotoLine> lines(List<PhotoAnswer> answers) {
    return IntStream.range(0, answers.size()).mapToObj(i -> line(i, answers.get(i))).toList();
  }

  PhotoLine line(int place, PhotoAnswer answer) {
    Refusal refused = answer.refused();
    if (refused != null) {
      return refused(place, answer.file(), "Refused", refused);
    }
    Kept kept = answer.kept();
    boolean heldBefore = kept != null && kept.heldBefore();
    List<String> sentences = new ArrayList<>(List.of(figures(answer, heldBefore)));
    sentences.addAll(answer.remarks());
    return new PhotoLine(
        place,
        answer.file(),
        heldBefore ? "held" : "measured",
        headline(kept),
        sentences,
        kept == null || kept.readingId() == null ? null : address(slug, kept.readingId()));
  }

  /** The line of a file that gives no diameter. */
  static PhotoLine refused(int place, String file, String headline, Refusal refused) {
    String again =
        "Choose it again, with \u201c"
            + PhotoForm.TAKEN_AT_NAME
            + "\u201d filled in on the page of the rig.";
    return new PhotoLine(place, file, "refused", headline, refused.sentencesOnPages(again), null);
  }

  static String address(String slug, long readingId) {
    return "/rigs/" + slug + "/readings/" + readingId;
  }

  private static String headline(@Nullable Kept kept) {
    if (kept != null && kept.heldBefore()) {
      return "Held already, nothing added";
    }
    return kept != null && kept.use() == Use.SET_ASIDE ? "Measured, set aside" : "Measured";
  }

  private String figures(PhotoAnswer answer, boolean heldBefore) {
    PhotoAnswer.Measured measured = Objects.requireNonNull(answer.measured());
    return typed.words(time, answer.takenAt(), heldBefore)
        + along(measured.axis(), measured.figures())
        + ", from "
        + Typeset.places(measured.figures().limbArcDeg(), 0)
        + "\u00b0 of the limb.";
  }

  /** A diameter with its axis: {@code diameter 840.12 ± 0.31 px along the horizon}. */
  static String along(Axis axis, DiscFigures figures) {
    String where =
        switch (axis) {
          case HORIZONTAL -> "along the horizon";
          case VERTICAL -> "across the horizon";
          case LIMB_FIT -> "as the mean of both axes";
        };
    return "diameter " + px(figures.along(axis)) + " " + where;
  }

  static String px(DiscFigures.Along along) {
    return Typeset.unbroken(
        Typeset.pair(new Measured(along.diameterPx(), along.uncertaintyPx())) + " px");
  }

  /** Of all files together. */
  static String summary(List<PhotoAnswer> answers) {
    long refused = answers.stream().filter(answer -> !answer.isMeasured()).count();
    long held =
        answers.stream()
            .filter(answer -> answer.kept() != null && answer.kept().heldBefore())
            .count();
    long measured = answers.size() - refused - held;
    List<String> parts = new ArrayList<>();
    if (measured > 0) {
      parts.add(Typeset.whole(measured) + " measured");
    }
    if (held > 0) {
      parts.add(Typeset.whole(held) + " held already");
    }
    parts.add(refused == 0 ? "none refused" : Typeset.whole(refused) + " refused");
    String nothing = held > 0 && measured == 0 ? " Nothing was added." : "";
    return Typeset.count(answers.size(), "photograph")
        + ": "
        + String.join(", ", parts)
        + "."
        + nothing;
  }
}
