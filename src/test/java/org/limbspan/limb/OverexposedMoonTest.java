package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.limb.Measurement.Measured;
import org.limbspan.limb.Measurement.Refused;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.MoonScene;

/** Limbs brighter than white: measured with a truthful uncertainty, or refused for that reason. */
class OverexposedMoonTest {

  /** Phases and exposures; 1 makes the mean limb white. */
  @ParameterizedTest
  @CsvSource({
    "0.35, 0.9, 2",
    "0.35, 1.3, 5",
    "0.6, 0.95, 5.5",
    "0.6, 1.4, 3",
    "0.7, 1, 6",
    "0.7, 1.3, 4.5",
    "0.8, 0.95, 4",
    "0.8, 1.6, 2.5",
    "0.95, 1.2, 3",
    "1, 1, 5",
    "1, 1.5, 2",
    "1, 1.9, 4",
    "0.92, 1.4, 4"
  })
  void measuresAMoonWhoseLimbIsAroundWhite(double illuminated, double exposure, double fwhmPx) {
    MoonScene scene = scene(illuminated, exposure, fwhmPx);
    Measured disc = (Measured) measure(scene);

    assertThat(disc.horizontal().valuePx())
        .isCloseTo(
            scene.horizontalDiameterPx(),
            within(
                Math.min(
                    3 * disc.horizontal().uncertaintyPx(), 0.0015 * scene.horizontalDiameterPx())));
  }

  @ParameterizedTest
  @CsvSource({
    "0.35, 3, 3", "0.35, 4, 3", "0.35, 8, 2", "0.6, 4, 5", "0.6, 6, 2.5", "0.8, 4, 4", "0.8, 9, 3",
    "0.95, 5, 3", "0.95, 9, 2", "0.98, 6, 4", "1, 3, 5", "1, 6, 2", "1, 12, 4", "1, 20, 3"
  })
  void refusesOneThatIsFarBrighter(double illuminated, double exposure, double fwhmPx) {
    Measurement measurement = measure(scene(illuminated, exposure, fwhmPx));

    assertThat(measurement).isInstanceOf(Refused.class);
    assertThat(((Refused) measurement).reason()).isEqualTo(Refusal.OVEREXPOSED);
  }

  private static MoonScene scene(double illuminated, double exposure, double fwhmPx) {
    MoonScene scene = new MoonScene();
    scene.width = 1000;
    scene.height = 900;
    scene.centreX = 502.3;
    scene.centreY = 448.9;
    scene.radiusPx = 380;
    scene.altitudeDeg = 40;
    scene.illuminated = illuminated;
    scene.brightLimbDeg = 285;
    scene.exposure = exposure;
    scene.fwhmPx = fwhmPx;
    return scene;
  }

  private static Measurement measure(MoonScene scene) {
    return DiscMeasurer.measure(
        PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92)),
        MeasureOptions.standard());
  }
}
