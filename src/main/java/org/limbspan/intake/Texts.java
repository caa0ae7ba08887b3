package org.limbspan.intake;

/** Free text that a database and a page can hold. */
final class Texts {

  private Texts() {}

  /** Whether a text is free of control characters, save tab and line breaks, and of half pairs. */
  static boolean isStorable(String text) {
    return text.codePoints().noneMatch(Texts::isForbidden);
  }

  private static boolean isForbidden(int codePoint) {
    boolean lineOrTab = codePoint == '\n' || codePoint == '\r' || codePoint == '\t';
    boolean halfPair = codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE;
    return halfPair || (Character.isISOControl(codePoint) && !lineOrTab);
  }
}
