package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.platform.InvalidInput;
import org.limbspan.sky.Axis;

class PageTokenTest {

  private static final Instant AT = Instant.parse("2026-02-01T21:14:00.123456Z");

  @Test
  void leadsBackToTheMicrosecondAndTheAxis() {
    ReadingSpan span = PageToken.spanAfter(PageToken.of(reading()), ReadingSpan.ALL);
    assertThat(span.afterAt()).isEqualTo(AT);
    assertThat(span.afterAxis()).isEqualTo("limb-fit");
    assertThat(span.to()).isEqualTo(ReadingSpan.ALL.to());
  }

  @Test
  void isNothingButLettersDigitsAndDashes() {
    assertThat(PageToken.of(reading())).matches("[A-Za-z0-9_-]+");
  }

  @Test
  void startsNoEarlierThanTheSpan() {
    ReadingSpan later = ReadingSpan.between(AT.plusSeconds(1), ReadingSpan.ALL.to());
    assertThat(PageToken.spanAfter(PageToken.of(reading()), later)).isEqualTo(later);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "x", "made up", "MjAyNi0wMi0wMVQyMToxNDowMFogdXA", "ÄÖ"})
  void refusesWhatWasNeverGivenOut(String token) {
    assertThatThrownBy(() -> PageToken.spanAfter(token, ReadingSpan.ALL))
        .isInstanceOf(InvalidInput.class);
  }

  private static RecordedReading reading() {
    return new RecordedReading(
        7,
        AT,
        Axis.LIMB_FIT,
        1,
        new Diameter(1760, 1.6, DiameterUnit.PIXEL),
        List.of(),
        Circumstances.NONE,
        AT);
  }
}
