package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.limbspan.limb.Measurement.Measured;
import org.limbspan.limb.Measurement.Refused;

/**
 * Against photographs by an independent renderer (resource folder reference/photos, its README says
 * what they are): diameters within 0.08 %, of an over-exposed disc within three standard
 * uncertainties.
 */
class DiscMeasurerReferenceTest {

  private static final Map<String, Refusal> REFUSALS =
      Map.of(
          "no Moon: street lamp", Refusal.NO_MOON,
          "crescent too thin (2 %)", Refusal.CRESCENT_TOO_THIN);

  static List<PhotoFiles.Truth> measurable() {
    return PhotoFiles.truth().stream()
        .filter(r -> !REFUSALS.containsKey(r.refuseReason()))
        .toList();
  }

  static List<PhotoFiles.Truth> unfit() {
    return PhotoFiles.truth().stream().filter(r -> REFUSALS.containsKey(r.refuseReason())).toList();
  }

  @ParameterizedTest
  @MethodSource("measurable")
  void measuresTheDisc(PhotoFiles.Truth truth) {
    Measurement measurement = measure(truth);

    assertThat(measurement).isInstanceOf(Measured.class);
    Measured disc = (Measured) measurement;
    agrees(disc.horizontal(), truth, truth.horizontalPx());
    agrees(disc.vertical(), truth, truth.verticalPx());
  }

  @ParameterizedTest
  @MethodSource("unfit")
  void refusesForTheRightReason(PhotoFiles.Truth truth) {
    Measurement measurement = measure(truth);

    assertThat(measurement).isInstanceOf(Refused.class);
    assertThat(((Refused) measurement).reason()).isEqualTo(REFUSALS.get(truth.refuseReason()));
  }

  /**
   * Computed with a wrong clock or place, or for a camera held aslant: the disc is not flattened.
   */
  @ParameterizedTest
  @CsvSource({
    "0.7, -60",
    "0.7, -30",
    "0.7, -20",
    "0.7, 20",
    "0.7, 30",
    "0.7, 60",
    "0.7, 180",
    "0.3, 0",
    "0.99, 120"
  })
  void believesAPartialMoonWhoseSunStandsElsewhere(double computedFraction, double turnDeg) {
    PhotoFiles.Truth truth =
        PhotoFiles.truth().stream().filter(t -> t.kind().equals("clean_gibbous")).findFirst().get();
    MeasureOptions options =
        MeasureOptions.standard()
            .expecting(
                new MeasureOptions.ExpectedPhase(
                    computedFraction, 0.0044, Math.toRadians(170 + turnDeg), 0.035))
            .expecting(new MeasureOptions.ExpectedFlattening(0.003, 0.0002));

    Measured disc =
        (Measured)
            DiscMeasurer.measure(PhotoFiles.linear(PhotoFiles.decoded(truth.file())), options);

    agrees(disc.horizontal(), truth, truth.horizontalPx());
    agrees(disc.vertical(), truth, truth.verticalPx());
  }

  private static void agrees(Diameter diameter, PhotoFiles.Truth truth, double expected) {
    double allowed =
        truth.kind().startsWith("overexp") ? 3 * diameter.uncertaintyPx() : 0.0008 * expected;
    assertThat(diameter.valuePx() - expected).as("error in pixels").isBetween(-allowed, allowed);
    assertThat(diameter.relativeUncertainty()).as("uncertainty").isBetween(0.0001, 0.0015);
  }

  private static Measurement measure(PhotoFiles.Truth truth) {
    return DiscMeasurer.measure(
        PhotoFiles.linear(PhotoFiles.decoded(truth.file())), MeasureOptions.standard());
  }
}
