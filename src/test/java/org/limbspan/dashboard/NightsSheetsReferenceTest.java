package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.dashboard.NightsSheet.Latitude;
import org.limbspan.sky.SkyFixture;
import org.limbspan.watch.NightsResult;

class NightsSheetsReferenceTest {

  private static final NightsSheet SHEET =
      NightsSheets.of(InventedLedger.of(40, List.of()), SkyFixture.sky());

  /** Figures of the near-Moon hypothesis in the project's own plan: common practice, no source. */
  @ParameterizedTest
  @CsvSource({"36.5, 2.0", "51.5, 1.6", "\u221233.9, 2.9"})
  void listsTheNearMoonByLatitude(String latitude, String ratio) {
    Latitude line =
        SHEET.latitudes().stream()
            .filter(each -> each.latitude().equals(latitude + "\u00b0"))
            .findFirst()
            .orElseThrow();
    assertThat(String.format("%.1f", Double.parseDouble(line.near()))).isEqualTo(ratio);
  }

  @Test
  void marksTheLatitudeOfTheRigItself() {
    assertThat(SHEET.latitudes())
        .filteredOn(Latitude::own)
        .singleElement()
        .satisfies(line -> assertThat(line.latitude()).isEqualTo("48.2\u00b0"));
  }

  @Test
  void setsEachPassBesideBothHypotheses() {
    assertThat(SHEET.latest())
        .singleElement()
        .satisfies(
            line -> {
              assertThat(line.observed()).isEqualTo("1.0118 \u00b1 0.0013");
              assertThat(line.computed()).isEqualTo("1.0121");
              assertThat(Double.parseDouble(line.near())).isBetween(0.3, 3.0);
              assertThat(line.verdict()).isEqualTo("agrees");
            });
    assertThat(SHEET.verdict()).containsExactly("There is nothing to compare yet.");
  }

  @Test
  void weighsEachPassByWhatItCanTell() {
    NightsResult.Night sharp = night(3, 1.012, 0.001);
    NightsResult.Night blunt = night(6, 1.020, 0.002);
    List<RunningMean.At> means = RunningMean.of(List.of(sharp, blunt));
    assertThat(means.get(0).observed()).isEqualTo(1.012, within(1e-9));
    // Weights 4 to 1: (4 * 1.012 + 1.020) / 5, u = 0.001 / sqrt(1 + 1/4).
    assertThat(means.get(1).observed()).isCloseTo(1.0136, within(2e-5));
    assertThat(means.get(1).uncertainty()).isCloseTo(0.000894, within(5e-6));
  }

  private static NightsResult.Night night(int at, double ratio, double uncertainty) {
    return new NightsResult.Night(
        InventedLedger.at(at),
        InventedLedger.at(at),
        InventedLedger.at(at + 1),
        12,
        48,
        "horizontal",
        2,
        ratio,
        uncertainty,
        1.0121,
        "agrees");
  }
}
