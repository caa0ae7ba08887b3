package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.OwnCurve;
import org.limbspan.dashboard.Drawing.Layer;
import org.limbspan.dashboard.Drawing.Look;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.sky.SkyFixture;

class DrawingsTest {

  private static final LedgerFacts LEDGER = InventedLedger.of(300, List.of());
  private static final CycleDrawings DRAWINGS = new CycleDrawings(LEDGER, SkyFixture.sky());

  @Test
  void foldsEveryReadingIntoOneMonth() {
    Layer observed = only(DRAWINGS.folded(), Look.OBSERVED);
    assertThat(observed.x()).isSorted().allSatisfy(day -> assertThat(day).isBetween(-14.5, 14.5));
    double nearPerigee = mean(observed, -2, 2);
    assertThat(nearPerigee / mean(observed, 11, 14.5)).isBetween(1.08, 1.16);
  }

  @Test
  void foldsByTheReadingsOwnMonthsAlike() {
    OwnCurve own =
        OwnCurve.of(LEDGER.observations(), LEDGER.site(), AltitudeSource.COMPUTED).orElseThrow();
    Layer observed = only(DRAWINGS.folded(own), Look.OBSERVED);
    assertThat(mean(observed, -2, 2) / mean(observed, 11, 13.8)).isBetween(1.08, 1.16);
  }

  @Test
  void drawsTheLawThroughTheReadings() {
    Drawing law = DRAWINGS.law();
    Layer line = only(law, Look.LINE);
    // 2 asin(1737.4 km / d) in arcminutes.
    double distanceKm = 1000 * line.x().get(30);
    assertThat(line.y().get(30))
        .isCloseTo(60 * Math.toDegrees(2 * Math.asin(1737.4 / distanceKm)), within(1e-4));
    Layer observed = only(law, Look.OBSERVED);
    for (int i = 0; i < observed.x().size(); i++) {
      assertThat(observed.x().get(i) * observed.y().get(i))
          .isCloseTo(distanceKm / 1000 * line.y().get(30), within(15.0));
    }
  }

  @Test
  void drawsOfEachAlertWhatItRestsOn() {
    LedgerFacts stepped = InventedLedger.of(60, List.of(InventedLedger.step(60, "raised")));
    for (String kind :
        List.of(
            "scale-step",
            "scale-drift",
            "scatter-growth",
            "altitude-trend",
            "clock-suspect",
            "ratio-departure",
            "swing-departure")) {
      Drawing drawing =
          EvidenceDrawing.of(stepped, DrawingsTest::none, InventedLedger.alert(60, kind));
      assertThat(drawing.layers()).as(kind).isNotEmpty();
      assertThat(EvidenceDrawing.words(kind)).as(kind).endsWith(".");
      drawing.layers().forEach(layer -> assertThat(layer.x()).as(kind).isSorted());
    }
  }

  @Test
  void levelsTheResidualsOnBothSidesOfAStep() {
    LedgerFacts stepped = InventedLedger.of(60, List.of(InventedLedger.step(60, "raised")));
    Drawing drawing =
        EvidenceDrawing.of(stepped, DrawingsTest::none, InventedLedger.alert(60, "scale-step"));
    List<Layer> levels =
        drawing.layers().stream().filter(layer -> layer.look() == Look.JUDGED).toList();
    assertThat(levels).hasSize(2);
    assertThat(levels.get(0).y().get(0)).isCloseTo(0, within(0.06));
    assertThat(levels.get(1).y().get(0)).isCloseTo(0.6, within(0.06));
  }

  @Test
  void keepsOnePointOfEachCellAndTheExtremes() {
    Random random = new Random(7);
    double[] x = random.doubles(50_000).toArray();
    double[] y = random.doubles(50_000).toArray();
    int[] kept = Cells.indexes(x.length, i -> x[i], i -> y[i]);
    assertThat(kept.length).isBetween(30_000, 360 * 160);
    double[] across = IntStream.of(kept).mapToDouble(i -> x[i]).toArray();
    assertThat(across).isSorted();
    double most = Arrays.stream(x).max().orElseThrow();
    assertThat(across[across.length - 1]).isCloseTo(most, within(1 / 360.0));
    assertThat(Cells.indexes(3, i -> 1, i -> 2)).containsExactly(0);
    assertThat(Cells.indexes(0, i -> 1, i -> 2)).isEmpty();
  }

  private static InstrumentHistory none() {
    throw new AssertionError("asked for calibrations");
  }

  private static Layer only(Drawing drawing, Look look) {
    return drawing.layers().stream()
        .filter(layer -> layer.look() == look)
        .findFirst()
        .orElseThrow();
  }

  private static double mean(Layer layer, double from, double to) {
    return IntStream.range(0, layer.x().size())
        .filter(i -> layer.x().get(i) >= from && layer.x().get(i) <= to)
        .mapToDouble(i -> layer.y().get(i))
        .average()
        .orElseThrow();
  }
}
