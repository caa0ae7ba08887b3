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
}
