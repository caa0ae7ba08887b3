package org.limbspan.platform;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** SHA-256 (FIPS 180-4); every Java platform has it. */
public final class Sha256 {

  private Sha256() {}

  /** One to be fed. */
  public static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  public static byte[] of(byte[] bytes) {
    return digest().digest(bytes);
  }
}
