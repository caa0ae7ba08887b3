package org.limbspan.notice;

import java.security.SecureRandom;
import java.util.Base64;

/** The secret of a webhook: 256 random bits behind a prefix that tells what it is. */
final class Secret {

  private static final int BYTES = 32;
  private static final SecureRandom RANDOM = new SecureRandom();

  private Secret() {}

  static String cut() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return "limbspan-hook-" + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
