package org.limbspan.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** The check itself finds what it is there for. */
class OpenMetricsTextTest {

  /** After the form of the examples in the specification, with figures of our own. */
  private static final String SOUND =
      """
      # TYPE moons_seen counter
      # HELP moons_seen Invented.
      moons_seen_total{rig="a \\"b\\" \\\\ \\n"} 17.0
      moons_seen_created{rig="a \\"b\\" \\\\ \\n"} 1.7e+09
      # TYPE night_seconds gauge
      # UNIT night_seconds seconds
      night_seconds NaN
      # EOF
      """;

  @Test
  void readsASoundExposition() {
    assertThat(OpenMetricsText.read(SOUND))
        .containsEntry("moons_seen_total{rig=\"a \\\"b\\\" \\\\ \\n\"}", 17.0)
        .containsKey("night_seconds")
        .hasSize(3);
  }

  @Test
  void refusesWhatBreaksARule() {
    refuses("# EOF\n", "# EOF\n\n", "does not end");
    refuses("# EOF\n", "", "does not end");
    refuses("# TYPE night_seconds gauge\n", "", "without a TYPE");
    refuses("moons_seen_total{", "moons_seen{", "no suffix of a counter");
    refuses("night_seconds NaN", "night_seconds ", "neither");
    refuses("night_seconds NaN", "nights NaN", "no family");
    refuses("night_seconds NaN", "night_seconds 1\nnight_seconds 2", "told twice");
    refuses("night_seconds seconds", "night_seconds hours", "does not end the name");
    refuses("17.0", "-17.0", "below 0");
    refuses("# TYPE night", "\n# TYPE night", "neither");
    refuses("# EOF", "# HELP moons_seen Again.\n# EOF", "interleaved");
    refuses("\\n\"} 17", "\\t\"} 17", "neither");
  }

  private static void refuses(String part, String instead, String breach) {
    String text = SOUND.replace(part, instead);
    assertThat(text).isNotEqualTo(SOUND);
    assertThatThrownBy(() -> OpenMetricsText.read(text)).hasMessageContaining(breach);
  }
}
