package org.limbspan.notice;

import java.io.Serial;

/** An attempt to deliver failed; the message says why, for the owner. */
final class Undelivered extends Exception {

  @Serial private static final long serialVersionUID = 1L;

  private static final int LONGEST = 300;

  Undelivered(String reason) {
    super(line(reason));
  }

  Undelivered(String reason, Throwable cause) {
    super(line(reason), cause);
  }

  String reason() {
    return String.valueOf(getMessage());
  }

  private static String line(String reason) {
    String line = OneLine.of(reason);
    return line.length() > LONGEST ? line.substring(0, LONGEST) + "..." : line;
  }
}
