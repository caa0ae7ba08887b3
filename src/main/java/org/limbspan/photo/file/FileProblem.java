package org.limbspan.photo.file;

/** Why a file is no photograph to measure. */
public enum FileProblem {
  NOT_AN_IMAGE("not-an-image"),
  OTHER_FORMAT("other-format"),
  RAW("raw"),
  FILE_TOO_LARGE("file-too-large"),
  TOO_MANY_PIXELS("too-many-pixels"),
  TRUNCATED("truncated"),
  DAMAGED("damaged"),
  UNUSUAL_SAMPLES("unusual-samples");

  private final String label;

  FileProblem(String label) {
    this.label = label;
  }

  /** As clients see it. */
  public String label() {
    return label;
  }
}
