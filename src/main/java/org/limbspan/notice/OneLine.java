package org.limbspan.notice;

import java.util.regex.Pattern;

/** A text as one line: a line break in a subject would begin another header (RFC 5322, 2.2). */
final class OneLine {

  private static final Pattern BREAKS = Pattern.compile("[\\p{Cntrl}\\u0085\\u2028\\u2029]+");

  private OneLine() {}

  static String of(String text) {
    return BREAKS.matcher(text).replaceAll(" ").strip();
  }
}
