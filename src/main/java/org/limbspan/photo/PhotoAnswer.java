package org.limbspan.photo;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Axis;

/**
 * What became of a file that was sent: refused, or measured and perhaps kept.
 *
 * @param takenAt null if it is not known
 * @param refused null if it was measured
 * @param measured null if it was refused
 * @param kept null if nothing was stored
 */
public record PhotoAnswer(
    String file,
    @Nullable Instant takenAt,
    @Nullable Refusal refused,
    @Nullable Measured measured,
    @Nullable Kept kept,
    List<String> remarks) {

  private static final Set<String> OF_TIME =
      Set.of("no-time", "time-left-out", "time-twice", "time-ahead", "time-out-of-reach");

  public PhotoAnswer {
    remarks = List.copyOf(remarks);
  }

  /**
   * Why it gives no diameter.
   *
   * @param code one word for programs
   * @param reason in words, for clients of the interface
   * @param reasonOnPages the same for readers of a page, who know nothing of a client's fields,
   *     count setups from 1 and read a clock of the rig's time zone
   * @param question what the owner is asked, or null
   * @param questionOnPages the same for readers of a page
   */
  public record Refusal(
      String code,
      String reason,
      String reasonOnPages,
      @Nullable String question,
      @Nullable String questionOnPages) {

    /** Whether the instant at which it was taken is what lacks, or cannot be. */
    private boolean isOfTime() {
      return OF_TIME.contains(code);
    }

    /**
     * Reason and question for readers of a page.
     *
     * @param again what they may do where only its time is what lacks
     */
    public List<String> sentencesOnPages(String again) {
      List<String> sentences = new ArrayList<>(List.of(reasonOnPages));
      if (questionOnPages != null) {
        sentences.add(questionOnPages);
      }
      if (isOfTime()) {
        sentences.add(again);
      }
      return sentences;
    }

    static Refusal of(RefusedPhoto why) {
      return new Refusal(
          why.code(), why.reason(), why.reasonOnPages(), why.question(), why.questionOnPages());
    }
  }

  /** Its figures and the axis along which it counts. */
  public record Measured(Axis axis, DiscFigures figures) {}

  /**
   * How it is kept.
   *
   * @param heldBefore whether the same file was held already; then nothing was added
   * @param readingId the reading that it is part of; null as long as there is none
   */
  public record Kept(
      long photoId, boolean heldBefore, @Nullable Long readingId, @Nullable Use use) {}

  /** What its reading made of it. */
  public enum Use {
    USED("used"),
    SET_ASIDE("set-aside");

    private final String label;

    Use(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  static PhotoAnswer refused(String file, @Nullable Instant takenAt, RefusedPhoto why) {
    return new PhotoAnswer(file, takenAt, Refusal.of(why), null, null, List.of());
  }

  static PhotoAnswer measured(
      String file, Instant takenAt, Measured measured, List<String> remarks) {
    return new PhotoAnswer(file, takenAt, null, measured, null, remarks);
  }

  public boolean isMeasured() {
    return measured != null;
  }

  PhotoAnswer with(Kept its, List<String> moreRemarks) {
    List<String> all = new ArrayList<>(remarks);
    all.addAll(moreRemarks);
    return new PhotoAnswer(file, takenAt, refused, measured, its, all);
  }

  PhotoAnswer named(String otherFile) {
    return new PhotoAnswer(otherFile, takenAt, refused, measured, kept, remarks);
  }
}
