package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.limbspan.rig.Setup;

class FocalLengthsTest {

  private static final Instant SPRING = Instant.parse("2026-03-01T20:00:00Z");
  private static final Instant CHANGE = Instant.parse("2026-06-01T00:00:00Z");
  private static final Instant SUMMER = Instant.parse("2026-07-01T20:00:00Z");

  @Test
  void takesTheFocalLengthOfTheSetup() throws Exception {
    FocalLengths lengths = lengths(new FocalLengths.Told(SPRING, 400));
    lengths.take(SPRING.plusSeconds(60), 400.0);
    lengths.take(SPRING.plusSeconds(120), 401.0);
    lengths.take(SPRING.plusSeconds(180), null);
  }

  @Test
  void refusesAnotherOneAndAsksForANewSetup() {
    FocalLengths lengths = lengths(new FocalLengths.Told(SPRING, 400));
    RefusedPhoto refused =
        catchThrowableOfType(
            RefusedPhoto.class, () -> lengths.take(SPRING.plusSeconds(3600), 420.0));
    assertThat(refused.code()).isEqualTo("other-focal-length");
    assertThat(refused.reason()).contains("420 mm: expected 400 mm").contains("setup 0");
    assertThat(refused.reasonOnPages()).isEqualTo(refused.reason().replace("setup 0", "setup 1"));
    assertThat(refused.question())
        .contains("between 2026-03-01T20:00:00Z and 2026-03-01T21:00:00Z")
        .contains("new setup");
    assertThat(refused.questionOnPages())
        .contains("between 1 Mar 2026, 21:00 and 1 Mar 2026, 22:00")
        .contains("new setup");
  }

  @Test
  void asksNothingOfAPhotographInASetupOfItsOwn() throws Exception {
    FocalLengths lengths = lengths(new FocalLengths.Told(SPRING, 400));
    lengths.take(SUMMER, 600.0);
    assertThat(catchThrowableOfType(RefusedPhoto.class, () -> lengths.take(SUMMER, 400.0)))
        .isNotNull();
  }

  private static FocalLengths lengths(FocalLengths.Told... held) {
    return new FocalLengths(FocalLengthsTest::setupAt, List.of(held), ZoneId.of("Europe/Vienna"));
  }

  private static Setup setupAt(Instant at) {
    return at.isBefore(CHANGE)
        ? new Setup(1, 0, Optional.empty(), Optional.of(CHANGE), null)
        : new Setup(2, 1, Optional.of(CHANGE), Optional.empty(), null);
  }
}
