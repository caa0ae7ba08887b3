package org.limbspan.archive;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** The one hash in use; every Java platform has it. */
final class Sha256 {

  private Sha256() {}

  static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
