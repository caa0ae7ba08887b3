package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OneLineTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Moon\r\nBcc: all@example.org",
        "Moon\nBcc: all@example.org",
        "Moon\rBcc: all@example.org",
        "Moon\u0085Bcc: all@example.org",
        "Moon\u2028Bcc: all@example.org\u2029",
        "\u0000Moon\u0000Bcc: all@example.org",
      })
  void leavesNoBreakInALine(String text) {
    assertThat(OneLine.of(text)).isEqualTo("Moon Bcc: all@example.org");
  }
}
