package org.limbspan.notice;

import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** HMAC with SHA-256 (RFC 2104, FIPS 198-1). */
final class Signature {

  private static final String ALGORITHM = "HmacSHA256";

  private Signature() {}

  /** Of a webhook's body: {@code sha256=} and the hexadecimal code of time, point and body. */
  static String of(String secret, long timestampS, String body) {
    byte[] signed = (timestampS + "." + body).getBytes(StandardCharsets.UTF_8);
    return "sha256=" + hex(secret.getBytes(StandardCharsets.UTF_8), signed);
  }

  /** The code of a message, 64 hexadecimal digits. */
  static String hex(byte[] key, byte[] message) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(key, ALGORITHM));
      return HexFormat.of().formatHex(mac.doFinal(message));
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("every Java platform has " + ALGORITHM, e);
    }
  }
}
