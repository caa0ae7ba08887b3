package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The computed sight against the truth of the simulated rigs ({@code reference/readings}), which an
 * independent program computed from the same ephemeris with the full Earth orientation.
 */
class SimulatedRigsReferenceTest {

  private final Sky sky = SkyFixture.sky();

  @TestFactory
  List<DynamicTest> agreesWithTheTruthOf() {
    return SimulatedRig.FOLDERS.stream()
        .map(folder -> DynamicTest.dynamicTest(folder, () -> agrees(SimulatedRig.of(folder))))
        .toList();
  }

  /**
   * Tolerances: distances 0.2 km, of which 0.09 km light time and 0.05 km rounding in the file;
   * diameter 0.0002 %, of which 0.00005 % rounding; altitude 0.02 degrees, since the air of the
   * night is unknown here; azimuth 0.002 degrees along the horizon, since UT1 - UTC is.
   */
  private void agrees(SimulatedRig rig) {
    assertThat(rig.readings()).hasSizeGreaterThan(50);
    for (SimulatedRig.Truth truth : rig.readings()) {
      MoonSight sight = sky.moonAt(truth.at(), rig.site());
      assertThat(sight.geocentricDistanceKm())
          .as("geocentric distance, %s", truth.at())
          .isCloseTo(truth.geocentricKm(), within(0.2));
      assertThat(sight.topocentricDistanceKm())
          .as("topocentric distance, %s", truth.at())
          .isCloseTo(truth.topocentricKm(), within(0.2));
      assertThat(sight.horizontalDiameterArcmin() * 60)
          .as("diameter, %s", truth.at())
          .isCloseTo(
              truth.topocentricDiameterArcsec(), within(2e-6 * truth.topocentricDiameterArcsec()));
      assertThat(sight.apparentAltitudeDeg())
          .as("apparent altitude, %s", truth.at())
          .isCloseTo(truth.apparentAltitudeDeg(), within(0.02));
      double azimuthDifference =
          Math.IEEEremainder(sight.azimuthDeg() - truth.azimuthDeg(), 360)
              * Math.cos(Math.toRadians(sight.altitudeDeg()));
      assertThat(azimuthDifference).as("azimuth, %s", truth.at()).isCloseTo(0, within(0.002));
    }
  }

  /**
   * Along the reading's own axis. The simulator leaves the uniform contraction out of the
   * horizontal diameter only; this code leaves it out of both, so it is put back here. What remains
   * is the air of the night: 25 K or 9 % of pressure away from the mean is 9 % of the flattening.
   * Above 20 degrees that is below 0.02 % of the diameter.
   */
  @TestFactory
  List<DynamicTest> flattensTheDiscAsTheTruthOf() {
    return List.of("step-minus-1", "clean-triples-3y", "declared-change").stream()
        .map(folder -> DynamicTest.dynamicTest(folder, () -> flattens(SimulatedRig.of(folder))))
        .toList();
  }

  private void flattens(SimulatedRig rig) {
    assertThat(rig.axis()).isNotEqualTo(Axis.HORIZONTAL);
    double uniform = Refraction.horizontalContraction(Atmosphere.meanAt(rig.site().elevationM()));
    double share = rig.axis() == Axis.VERTICAL ? 1 : 0.5;
    for (SimulatedRig.Truth truth : rig.readings()) {
      MoonSight sight = sky.moonAt(truth.at(), rig.site());
      double ratio = sight.diameterArcmin(rig.axis()) / sight.horizontalDiameterArcmin();
      double flattening = 1 - ratio + share * uniform;
      double truly = 1 - truth.loggedAxisDiameterArcsec() / truth.topocentricDiameterArcsec();
      assertThat(flattening)
          .as("%s at %s degrees", truth.at(), truth.apparentAltitudeDeg())
          .isCloseTo(truly, within(0.09 * truly));
      if (truth.apparentAltitudeDeg() > 20) {
        assertThat(flattening).isCloseTo(truly, within(0.0001));
      }
    }
  }
}
