package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.limbspan.photo.file.Orientation;
import org.limbspan.photo.file.Shot;

class ShotInstantTest {

  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  @Test
  void believesTheOffsetOfTheFile() throws Exception {
    ShotInstant instant =
        ShotInstant.of(null, shot("2026-02-01T23:31:58", ZoneOffset.ofHours(-5)), VIENNA);
    assertThat(instant.at()).isEqualTo(Instant.parse("2026-02-02T04:31:58Z"));
    assertThat(instant.clock()).isEqualTo(ShotInstant.Clock.OFFSET);
  }

  @Test
  void takesTheRigsZoneForACameraThatTellsNoOffset() throws Exception {
    assertThat(ShotInstant.of(null, shot("2026-02-01T23:31:58", null), VIENNA).at())
        .isEqualTo(Instant.parse("2026-02-01T22:31:58Z"));
    assertThat(ShotInstant.of(null, shot("2026-07-01T23:31:58", null), VIENNA).at())
        .isEqualTo(Instant.parse("2026-07-01T21:31:58Z"));
  }

  @Test
  void believesTheSenderBeforeTheCamera() throws Exception {
    Instant told = Instant.parse("2026-02-01T20:00:00Z");
    ShotInstant instant = ShotInstant.of(told, shot("2019-01-01T00:00:00", ZoneOffset.UTC), VIENNA);
    assertThat(instant).isEqualTo(new ShotInstant(told, ShotInstant.Clock.SENDER));
  }

  @Test
  void refusesAPhotographThatNobodyTellsTheTimeOf() {
    RefusedPhoto refused = refusal(Shot.UNTOLD);
    assertThat(refused.code()).isEqualTo("no-time");
    assertThat(refused.reason()).contains("DateTimeOriginal").contains("takenAt");
    assertThat(refused.reasonOnPages()).contains("DateTimeOriginal").doesNotContain("takenAt");
  }

  @Test
  void refusesATimeThatWasLeftOutWhenClocksWerePutForward() {
    // Directive 2000/84/EC: at 01:00 UTC of the last Sunday of March
    RefusedPhoto refused = refusal(shot("2026-03-29T02:30:00", null));
    assertThat(refused.code()).isEqualTo("time-left-out");
    assertThat(refused.reason()).contains("2026-03-29 02:30").contains("by 60 minutes");
  }

  @Test
  void refusesATimeThatCameTwiceWhenClocksWerePutBack() {
    RefusedPhoto refused = refusal(shot("2026-10-25T02:30:00", null));
    assertThat(refused.code()).isEqualTo("time-twice");
    assertThat(refused.reason()).contains("once at +02:00, once at +01:00");
  }

  @Test
  void hasNoDoubtAboutSuchTimesWhenTheFileTellsItsOffset() throws Exception {
    Shot shot = shot("2026-10-25T02:30:00", ZoneOffset.ofHours(1));
    assertThat(ShotInstant.of(null, shot, VIENNA).at())
        .isEqualTo(Instant.parse("2026-10-25T01:30:00Z"));
  }

  private static RefusedPhoto refusal(Shot shot) {
    return catchThrowableOfType(RefusedPhoto.class, () -> ShotInstant.of(null, shot, VIENNA));
  }

  private static Shot shot(String local, @Nullable ZoneOffset offset) {
    return new Shot(
        LocalDateTime.parse(local), offset, null, null, null, null, null, Orientation.UPRIGHT);
  }
}
