package org.limbspan.photo;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.limbspan.limb.Measurement.Refused;
import org.limbspan.limb.SheetMeasurement;
import org.limbspan.photo.file.UnusableFile;

/** A photograph that gives no reading; the message says why in words. */
final class RefusedPhoto extends Exception {

  private static final long serialVersionUID = 1L;

  private final String code;
  private final String reasonOnPages;
  private final @Nullable String question;
  private final @Nullable String questionOnPages;

  private RefusedPhoto(
      String code,
      String reason,
      String reasonOnPages,
      @Nullable String question,
      @Nullable String questionOnPages) {
    super(reason);
    this.code = code;
    this.reasonOnPages = reasonOnPages;
    this.question = question;
    this.questionOnPages = questionOnPages;
  }

  RefusedPhoto(String code, String reason) {
    this(code, reason, reason, null, null);
  }

  /** The same, for which pages have words of their own. */
  RefusedPhoto onPages(String words) {
    return new RefusedPhoto(code, reason(), words, question, questionOnPages);
  }

  /** The same with a question for the owner, which pages have in words of their own. */
  RefusedPhoto asking(String words, String wordsOnPages) {
    return new RefusedPhoto(code, reason(), reasonOnPages, words, wordsOnPages);
  }

  static RefusedPhoto of(UnusableFile file) {
    return new RefusedPhoto(file.problem().label(), file.words());
  }

  static RefusedPhoto of(Refused refused) {
    String code = refused.reason().name().toLowerCase(Locale.ROOT).replace('_', '-');
    return new RefusedPhoto(code, LimbWords.of(refused));
  }

  static RefusedPhoto of(SheetMeasurement.Refused refused) {
    String code = refused.reason().name().toLowerCase(Locale.ROOT).replace('_', '-');
    return new RefusedPhoto(code, SheetWords.of(refused));
  }

  /** One word for programs, such as {@code no-moon}. */
  String code() {
    return code;
  }

  String reason() {
    return String.valueOf(getMessage());
  }

  /**
   * The reason without what only a client of the interface can follow; setups from 1, instants in
   * the rig's time zone.
   */
  String reasonOnPages() {
    return reasonOnPages;
  }

  /** What the owner is asked, or null. */
  @Nullable String question() {
    return question;
  }

  /** The same in the words of pages. */
  @Nullable String questionOnPages() {
    return questionOnPages;
  }
}
