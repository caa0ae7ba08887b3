package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
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

  static List<Map<String, String>> measurable() {
    return PhotoFiles.truth().stream()
        .filter(r -> !REFUSALS.containsKey(r.get("refuse_reason")))
        .toList();
  }

  static List<Map<String, String>> unfit() {
    return PhotoFiles.truth().stream()
        .filter(r -> REFUSALS.containsKey(r.get("refuse_reason")))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("measurable")
  void measuresTheDisc(Map<String, String> truth) {
    Measurement measurement = measure(truth);

    assertThat(measurement).isInstanceOf(Measured.class);
    Measured disc = (Measured) measurement;
    agrees(disc.horizontal(), truth, "true_h_px");
    agrees(disc.vertical(), truth, "true_v_px");
  }

  @ParameterizedTest
  @MethodSource("unfit")
  void refusesForTheRightReason(Map<String, String> truth) {
    Measurement measurement = measure(truth);

    assertThat(measurement).isInstanceOf(Refused.class);
    assertThat(((Refused) measurement).reason())
        .isEqualTo(REFUSALS.get(truth.get("refuse_reason")));
  }

  private static void agrees(Diameter diameter, Map<String, String> truth, String column) {
    double expected = Double.parseDouble(truth.get(column));
    double allowed =
        truth.get("kind").startsWith("overexp") ? 3 * diameter.uncertaintyPx() : 0.0008 * expected;
    assertThat(diameter.valuePx() - expected).as(column).isBetween(-allowed, allowed);
    assertThat(diameter.relativeUncertainty()).as("uncertainty").isBetween(0.0001, 0.0015);
  }

  private static Measurement measure(Map<String, String> truth) {
    return DiscMeasurer.measure(
        PhotoFiles.linear(PhotoFiles.decoded(truth.get("file"))), MeasureOptions.standard());
  }
}
