package org.limbspan.photo.file;

/** A file that is no photograph to measure; the message says why and what to do, in words. */
public final class UnusableFile extends Exception {

  private static final long serialVersionUID = 1L;

  private final FileProblem problem;

  UnusableFile(FileProblem problem, String words) {
    super(words);
    this.problem = problem;
  }

  static UnusableFile truncated() {
    return new UnusableFile(
        FileProblem.TRUNCATED,
        "The file ends before its picture does: it was cut off. Copy it from the camera again.");
  }

  static UnusableFile damaged(String what) {
    return new UnusableFile(
        FileProblem.DAMAGED, "The file is damaged: " + what + ". Copy it from the camera again.");
  }

  static UnusableFile unusualSamples(String found) {
    return new UnusableFile(
        FileProblem.UNUSUAL_SAMPLES,
        "The picture has "
            + found
            + ": expected grey or red, green, blue of 8 or 16 bits (JPEG: 8 bits).");
  }

  public FileProblem problem() {
    return problem;
  }

  /** The message in words, never null. */
  public String words() {
    return String.valueOf(getMessage());
  }
}
