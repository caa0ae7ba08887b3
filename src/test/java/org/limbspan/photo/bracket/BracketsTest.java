package org.limbspan.photo.bracket;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Axis;

class BracketsTest {

  private static final Instant NIGHT = Instant.parse("2026-05-29T20:00:00Z");

  @Test
  void putsFramesOfTenMinutesTogether() {
    List<List<Frame>> brackets =
        Brackets.of(List.of(frame(1, 0, 0), frame(2, 4, 0), frame(3, 599, 0), frame(4, 3600, 0)));
    assertThat(ids(brackets)).containsExactly(List.of(1L, 2L, 3L), List.of(4L));
  }

  @Test
  void beginsANewOneTenMinutesAfterTheFirst() {
    List<List<Frame>> brackets = Brackets.of(List.of(frame(1, 0, 0), frame(2, 600, 0)));
    assertThat(ids(brackets)).containsExactly(List.of(1L), List.of(2L));
  }

  @Test
  void cutsASeriesWithoutAPauseIntoPiecesOfTenMinutes() {
    List<Frame> series = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      series.add(frame(i, 60 * i, 0));
    }
    assertThat(Brackets.of(series)).hasSize(6).allMatch(bracket -> bracket.size() == 10);
  }

  @Test
  void keepsSetupsAndAxesApart() {
    Frame other = new Frame(3, "3", NIGHT.plusSeconds(2), 0, Axis.VERTICAL, 800, 0.1, 0.2, null);
    List<List<Frame>> brackets = Brackets.of(List.of(frame(1, 0, 0), frame(2, 1, 1), other));
    assertThat(ids(brackets)).containsExactly(List.of(1L), List.of(2L), List.of(3L));
  }

  @Test
  void doesNotMindTheOrderOfArrival() {
    List<Frame> frames = new ArrayList<>();
    Random random = new Random(5);
    for (int i = 0; i < 200; i++) {
      frames.add(frame(i, random.nextInt(40_000), random.nextInt(2)));
    }
    List<List<Frame>> expected = Brackets.of(frames);
    for (int i = 0; i < 20; i++) {
      Collections.shuffle(frames, random);
      assertThat(Brackets.of(frames)).containsExactlyInAnyOrderElementsOf(expected);
    }
  }

  @Test
  void makesNothingOfNothing() {
    assertThat(Brackets.of(List.of())).isEmpty();
  }

  private static Frame frame(long id, int second, int setup) {
    return new Frame(
        id,
        Long.toString(id),
        NIGHT.plusSeconds(second),
        setup,
        Axis.HORIZONTAL,
        800,
        0.1,
        0.2,
        null);
  }

  private static List<List<Long>> ids(List<List<Frame>> brackets) {
    return brackets.stream().map(bracket -> bracket.stream().map(Frame::photoId).toList()).toList();
  }
}
