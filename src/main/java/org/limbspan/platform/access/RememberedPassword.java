package org.limbspan.platform.access;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.jspecify.annotations.Nullable;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * Spares a client that sends the right password with every request the slow hash each time. What is
 * remembered is a keyed digest that is of no use outside this process.
 */
final class RememberedPassword implements PasswordEncoder {

  private static final String DIGEST = "HmacSHA256";

  private final PasswordEncoder slow;
  private final SecretKeySpec key;
  private volatile byte @Nullable [] lastMatch;

  RememberedPassword(PasswordEncoder slow) {
    this.slow = slow;
    byte[] random = new byte[32];
    new SecureRandom().nextBytes(random);
    this.key = new SecretKeySpec(random, DIGEST);
  }

  @Override
  public @Nullable String encode(@Nullable CharSequence password) {
    return slow.encode(password);
  }

  @Override
  public boolean matches(@Nullable CharSequence password, @Nullable String encoded) {
    byte[] digest = digest(encoded + " " + password);
    byte[] remembered = lastMatch;
    if (remembered != null && MessageDigest.isEqual(remembered, digest)) {
      return true;
    }
    boolean matches = slow.matches(password, encoded);
    if (matches) {
      lastMatch = digest;
    }
    return matches;
  }

  private byte[] digest(String text) {
    try {
      Mac mac = Mac.getInstance(DIGEST);
      mac.init(key);
      return mac.doFinal(text.getBytes(StandardCharsets.UTF_8));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }
}
