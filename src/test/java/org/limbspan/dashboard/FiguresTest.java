package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.limbspan.platform.InvalidInput;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

class FiguresTest {

  private static final Sky SKY = SkyFixture.sky();
  private static final LedgerFacts NUDGED =
      InventedLedger.of(400, List.of(InventedLedger.step(400, "raised")));

  @Test
  void drawEveryReadingWithTwiceItsUncertainty() {
    CycleFigure figure = cycle(whole(1000));
    assertThat(figure.t()).hasSize(400);
    assertThat(figure.figure().thinned()).isFalse();
    assertThat(figure.half().get(0)).isCloseTo(0.002 * figure.value().get(0), within(1e-5));
  }

  @Test
  void thinWhatTheScreenCannotShowAndSayThatMoreIsToBeHad() {
    CycleFigure figure = cycle(whole(100));
    assertThat(figure.t()).hasSizeLessThanOrEqualTo(100);
    assertThat(figure.figure().thinned()).isTrue();
    assertThat(figure.value()).contains(greatest());
    assertThat(residuals(whole(100)).figure().coarse()).isTrue();
    assertThat(residuals(whole(1000)).figure().coarse()).isFalse();
  }

  @Test
  void keepTheReadingsWhileUpWithinTheComputedRibbon() {
    CycleFigure figure = cycle(whole(4000));
    assertThat(figure.arcs()).isEmpty();
    assertThat(figure.ribbon().t()).hasSizeGreaterThan(3900);
    for (int i = 0; i < figure.ribbon().t().size(); i++) {
      assertThat(figure.ribbon().low().get(i)).isLessThan(figure.ribbon().high().get(i));
    }
  }

  @Test
  void showThePassesOfANarrowWindow() {
    FigureWindow window = new FigureWindow(InventedLedger.at(10), InventedLedger.at(20), 1000);
    CycleFigure figure = cycle(window);
    assertThat(figure.t()).hasSize(10);
    assertThat(figure.arcs()).hasSizeBetween(14, 17);
  }

  @Test
  void markApsidesCalibrationsAndTheJudgedChange() {
    Figure figure = cycle(whole(1000)).figure();
    assertThat(figure.marks())
        .extracting(Figure.Mark::kind)
        .contains("perigee", "apogee", "calibration")
        .doesNotContain("setup");
    assertThat(figure.changes())
        .singleElement()
        .satisfies(
            change -> {
              assertThat(change.words()).isEqualTo("+0.613 %");
              assertThat(change.from()).isLessThan(change.onset());
              assertThat(change.to()).isGreaterThan(change.onset());
            });
  }

  @Test
  void stepTheLevelAtTheJudgedChange() {
    List<ResidualsFigure.Level> levels = residuals(whole(1000)).levels();
    assertThat(levels)
        .extracting(ResidualsFigure.Level::percent)
        .satisfiesExactly(
            before -> assertThat(before).isCloseTo(0, within(0.06)),
            after -> assertThat(after).isCloseTo(0.6, within(0.06)));
  }

  @Test
  void drawTheNightRatiosAndTheirMean() {
    NightsFigure figure = NightsFigure.of(NUDGED, whole(1000), List.of(), SKY);
    assertThat(figure.value()).containsExactly(1.0118);
    assertThat(figure.half()).containsExactly(0.0026);
    assertThat(figure.mean()).isEqualTo(new NightsFigure.Mean(1.0118, 0.0026, 1.0121));
  }

  @Test
  void standOnALedgerWithoutReadings() {
    LedgerFacts empty = InventedLedger.of(0, List.of());
    FigureWindow window = FigureWindow.of(empty, Optional.empty(), Optional.empty(), 500);
    assertThat(CycleFigure.of(empty, window, List.of(), SKY, Optional.empty()).t()).isEmpty();
    assertThat(ResidualsFigure.of(empty, window, List.of()).levels()).isEmpty();
  }

  @Test
  void refuseAWindowThatEndsBeforeItBegins() {
    Instant now = InventedLedger.FIRST;
    assertThatThrownBy(() -> new FigureWindow(now, now.minus(Duration.ofDays(1)), 500))
        .isInstanceOf(InvalidInput.class)
        .hasMessageContaining("later than from");
  }

  private static FigureWindow whole(int points) {
    return FigureWindow.of(NUDGED, Optional.empty(), Optional.empty(), points);
  }

  private static CycleFigure cycle(FigureWindow window) {
    List<Apsis> apsides = SKY.apsides(window.from(), window.to());
    return CycleFigure.of(NUDGED, window, apsides, SKY, Optional.empty());
  }

  private static ResidualsFigure residuals(FigureWindow window) {
    return ResidualsFigure.of(NUDGED, window, List.of());
  }

  private static double greatest() {
    double greatest =
        NUDGED.observations().stream().mapToDouble(o -> o.observedArcmin()).max().orElseThrow();
    return Math.round(greatest * 1e5) / 1e5;
  }
}
