package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * RFC 4231, 4.2 to 4.8: HMAC-SHA-256, keys and data in hexadecimal; case 5 is left out, since it
 * cuts the code.
 */
class SignatureReferenceTest {

  @ParameterizedTest(name = "case {0}")
  @CsvSource({
    "1, 0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b, 4869205468657265,"
        + " b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7",
    "2, 4a656665, 7768617420646f2079612077616e7420666f72206e6f7468696e673f,"
        + " 5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
    "4, 0102030405060708090a0b0c0d0e0f10111213141516171819,"
        + " cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd,"
        + " 82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b",
  })
  void isThatOfTheStandard(int number, String key, String data, String code) {
    HexFormat hex = HexFormat.of();
    assertThat(Signature.hex(hex.parseHex(key), hex.parseHex(data))).isEqualTo(code);
  }

  @Test
  void isThatOfTheStandardForRepeatedBytes() {
    assertThat(Signature.hex(repeated(0xaa, 20), repeated(0xdd, 50)))
        .as("case 3")
        .isEqualTo("773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe");
    assertThat(
            Signature.hex(
                repeated(0xaa, 131),
                "Test Using Larger Than Block-Size Key - Hash Key First"
                    .getBytes(StandardCharsets.US_ASCII)))
        .as("case 6, a key longer than a block")
        .isEqualTo("60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54");
  }

  @Test
  void signsTimeAndBodyWithAPointBetween() {
    byte[] key = "secret".getBytes(StandardCharsets.UTF_8);
    byte[] signed = "1764000000.{\"a\": \"\u00e9\"}".getBytes(StandardCharsets.UTF_8);
    assertThat(Signature.of("secret", 1_764_000_000L, "{\"a\": \"\u00e9\"}"))
        .isEqualTo("sha256=" + Signature.hex(key, signed));
  }

  private static byte[] repeated(int value, int count) {
    byte[] bytes = new byte[count];
    java.util.Arrays.fill(bytes, (byte) value);
    return bytes;
  }
}
