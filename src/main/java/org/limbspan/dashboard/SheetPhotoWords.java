package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.PhotoAnswer.Refusal;
import org.limbspan.photo.SheetAnswer;
import org.limbspan.photo.SheetFigures;
import org.limbspan.rig.Entered;
import org.limbspan.rig.Entered.Outcome;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.scale.Measured;
import org.limbspan.scale.PlateScale;

/** Says what became of photographs of the sheet. */
final class SheetPhotoWords {

  private static final String AGAIN =
      "Send it again from the page of the rig, with \u201cWhen the sheet was photographed\u201d"
          + " filled in.";

  private final RigTime time;
  private final TypedPhotoTime typed;

  /**
   * Of photographs of one form.
   *
   * @param typed the time that its files were to have where they tell none
   */
  SheetPhotoWords(RigTime time, TypedPhotoTime typed) {
    this.time = time;
    this.typed = typed;
  }

  /** Of all files together. */
  static String summary(List<SheetAnswer> answers) {
    long refused = answers.stream().filter(answer -> answer.refused() != null).count();
    List<String> parts = new ArrayList<>();
    parts.add(Typeset.whole(answers.size() - refused) + " measured");
    count(parts, answers, Outcome.STORED, "entered");
    count(parts, answers, Outcome.ALREADY_HELD, "held already");
    count(parts, answers, Outcome.HELD_AS_WITHDRAWN, "taken back before");
    parts.add(refused == 0 ? "none refused" : Typeset.whole(refused) + " refused");
    return Typeset.count(answers.size(), "photograph") + ": " + String.join(", ", parts) + ".";
  }

  private static void count(
      List<String> parts, List<SheetAnswer> answers, Outcome outcome, String words) {
    long count =
        answers.stream()
            .map(SheetAnswer::entered)
            .filter(entered -> entered != null && entered.outcome() == outcome)
            .count();
    if (count > 0) {
      parts.add(Typeset.whole(count) + " " + words);
    }
  }

  List<PhotoLine> lines(List<SheetAnswer> answers) {
    return IntStream.range(0, answers.size()).mapToObj(i -> line(i, answers.get(i))).toList();
  }

  private PhotoLine line(int place, SheetAnswer answer) {
    Refusal refused = answer.refused();
    if (refused != null) {
      return new PhotoLine(
          place, answer.file(), "refused", "Refused", refused.sentencesOnPages(AGAIN), null);
    }
    Entered<RecordedCalibration> entered = answer.entered();
    boolean added = entered == null || entered.outcome() == Outcome.STORED;
    return new PhotoLine(
        place,
        answer.file(),
        added ? "measured" : "held",
        headline(entered),
        figures(answer, Objects.requireNonNull(answer.figures())),
        null);
  }

  private static String headline(@Nullable Entered<RecordedCalibration> entered) {
    if (entered == null) {
      return "Measured, not entered";
    }
    String setup = " setup " + (entered.fact().setup() + 1);
    return switch (entered.outcome()) {
      case STORED -> "Measured and entered in" + setup;
      case ALREADY_HELD -> "Held already in" + setup + ", nothing added";
      case HELD_AS_WITHDRAWN -> "Taken back before, not entered again";
    };
  }

  private List<String> figures(SheetAnswer answer, SheetFigures figures) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        typed.words(time, answer.takenAt(), false)
            + "tall side "
            + px(figures.tallSidePx(), figures.tallSideUncertaintyPx())
            + ", other side "
            + px(figures.otherSidePx(), figures.otherSideUncertaintyPx())
            + ", edges "
            + Typeset.unbroken(Typeset.places(figures.edgeFwhmPx(), 1) + " px")
            + " wide.");
    PlateScale scale = figures.calibration().plateScale();
    sentences.add(
        "Plate scale "
            + Typeset.unbroken(
                Typeset.pair(new Measured(scale.arcsecPerUnit(), scale.uncertainty()))
                    + " \u2033/px")
            + ".");
    sentences.addAll(answer.remarks());
    if (figures.shortening().isPresent() && answer.remarks().isEmpty()) {
      sentences.add(upright(figures));
    }
    return sentences;
  }

  private static String upright(SheetFigures figures) {
    Measured percent =
        new Measured(
            100 * figures.shortening().getAsDouble(), 100 * figures.proportionUncertainty());
    return "No lean is seen: against the other side the tall one is too short by "
        + Typeset.unbroken(Typeset.pair(percent) + " percent")
        + ".";
  }

  private static String px(double value, double uncertainty) {
    return Typeset.unbroken(Typeset.pair(new Measured(value, uncertainty)) + " px");
  }
}
