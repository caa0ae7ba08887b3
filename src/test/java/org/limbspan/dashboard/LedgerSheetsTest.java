package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.dashboard.LedgerSheet.Cause;

class LedgerSheetsTest {

  private static final LedgerSheet NUDGED =
      sheet(InventedLedger.of(60, List.of(InventedLedger.step(60, "raised"))));

  @Test
  void headsTheSheetWithPlaceAndReadings() {
    assertThat(NUDGED.title().site())
        .isEqualTo(
            "48\u00b0\u00a012.0\u2032\u00a0N, 16\u00b0\u00a024.0\u2032\u00a0E, 170 m above sea"
                + " level");
    assertThat(NUDGED.title().standing())
        .isEqualTo("60 readings from 1 March 2024 to 31 May 2024, 1 setup, 1 calibration.");
    assertThat(NUDGED.title().judged()).endsWith("; nothing waits");
  }

  @Test
  void remarksOnWhatWaitsForAnAnswerWithItsOdds() {
    assertThat(NUDGED.remarks())
        .singleElement()
        .satisfies(
            remark -> {
              assertThat(remark.headline()).isEqualTo("Every disc became larger.");
              assertThat(remark.waiting()).isTrue();
              assertThat(remark.causes())
                  .containsExactly(new Cause("the zoom was touched", "93 in 100"));
            });
  }

  @Test
  void hasNothingToAnswerOnceSettled() {
    LedgerSheet settled = sheet(InventedLedger.of(60, List.of(InventedLedger.step(60, "settled"))));
    assertThat(settled.remarks()).singleElement().matches(remark -> !remark.waiting());
  }

  @Test
  void saysTheLevelOfTheResidualsBeforeAndAfterAStep() {
    assertThat(NUDGED.residuals().figureSummary())
        .startsWith("Median residual: 0.00 % from 1 March 2024 to")
        .contains("; +0.60 % from")
        .endsWith("(30 readings).");
  }

  @Test
  void writesMonthsTheLatestFirstEachRoundedByItsOwnUncertainty() {
    assertThat(NUDGED.months())
        .extracting(LedgerSheet.Month::observed)
        .containsExactly("9.620 \u00b1 0.095", "12.42\u2007 \u00b1 0.21\u2007");
  }

  @Test
  void leavesOutEstimatesThatTheReadingsCannotCarry() {
    assertThat(NUDGED.estimates())
        .extracting(LedgerSheet.Estimate::observed)
        .containsExactly("1.0031 \u00b1 0.0042", "27.5523 \u00b1 0.0071", "0.97 \u00b1 0.11");
  }

  @Test
  void drawsNothingOfALedgerWithoutReadings() {
    LedgerSheet empty = sheet(InventedLedger.of(0, List.of()));
    assertThat(empty.title().empty()).isTrue();
    assertThat(empty.cycle().isDrawn()).isFalse();
    assertThat(empty.residuals().isDrawn()).isFalse();
    assertThat(empty.title().standing()).startsWith("No reading yet");
  }

  private static LedgerSheet sheet(LedgerFacts facts) {
    return LedgerSheets.of(facts, List.of(), InventedLedger.at(61));
  }
}
