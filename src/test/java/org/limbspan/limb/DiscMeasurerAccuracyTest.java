package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.limbspan.limb.Measurement.Measured;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.MoonScene;

/**
 * A few rendered photographs over phase, altitude, sky and lens, whose errors stay inside the
 * stated uncertainty and below 0.2 % of the diameter. The bench ({@link LimbBench}) has the whole
 * set.
 */
class DiscMeasurerAccuracyTest {

  /**
   * A scene by name.
   *
   * @param change from a full Moon of 440 px in a quiet night
   */
  record Case(String name, Consumer<MoonScene> change) {

    @Override
    public String toString() {
      return name;
    }
  }

  static List<Case> cases() {
    return List.of(
        new Case("full Moon", s -> {}),
        new Case("full Moon in a soft lens", s -> s.fwhmPx = 5.5),
        new Case("full Moon in a sharp lens", s -> s.fwhmPx = 1.6),
        new Case("full Moon in noise", s -> s.signalToNoise = 14),
        new Case("setting full Moon", s -> s.altitudeDeg = 2),
        new Case("gibbous Moon", s -> s.illuminated = 0.8),
        new Case("nearly full Moon", s -> s.illuminated = 0.985),
        new Case("rising, nearly full Moon", s -> nearlyFull(s, 0.99, 3)),
        new Case("terminator right inside the limb", s -> s.illuminated = 0.997),
        new Case("half Moon by day", DiscMeasurerAccuracyTest::byDay),
        new Case("seeing ripple", s -> s.ripplePx = 0.5),
        new Case("sharpened by the camera", s -> s.sharpening = 0.5),
        new Case("small disc", s -> s.radiusPx = 75),
        new Case(
            "small disc, sharpened by the camera", DiscMeasurerAccuracyTest::smallAndSharpened),
        new Case("lateral colour", s -> s.lateralColour = 6e-4),
        new Case("over-exposed limb", s -> s.exposure = 1.0));
  }

  private static void nearlyFull(MoonScene scene, double illuminated, double altitudeDeg) {
    scene.illuminated = illuminated;
    scene.altitudeDeg = altitudeDeg;
  }

  private static void smallAndSharpened(MoonScene scene) {
    scene.radiusPx = 95;
    scene.sharpening = 1;
    scene.fwhmPx = 3.5;
  }

  private static void byDay(MoonScene scene) {
    scene.illuminated = 0.5;
    scene.sky = 1.2;
    scene.exposure = 0.32;
  }

  private static MoonScene scene() {
    MoonScene scene = new MoonScene();
    scene.width = 620;
    scene.height = 560;
    scene.centreX = 309.4;
    scene.centreY = 281.8;
    scene.radiusPx = 220;
    scene.altitudeDeg = 35;
    scene.brightLimbDeg = 115;
    scene.relief = 0.0003;
    scene.hotPixels = 30;
    scene.seed = 4;
    return scene;
  }

  @ParameterizedTest
  @MethodSource("cases")
  void errsNoMoreThanItStates(Case drawn) {
    MoonScene scene = scene();
    drawn.change().accept(scene);
    Measurement measurement =
        DiscMeasurer.measure(
            PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 93)),
            MeasureOptions.standard());

    assertThat(measurement).isInstanceOf(Measured.class);
    Measured disc = (Measured) measurement;
    agrees(disc.horizontal(), scene.horizontalDiameterPx());
    agrees(disc.vertical(), scene.verticalDiameterPx());
  }

  private static void agrees(Diameter diameter, double truth) {
    double allowed = Math.min(0.002 * truth, 3 * diameter.uncertaintyPx());
    assertThat(diameter.valuePx() - truth).as("error in pixels").isBetween(-allowed, allowed);
    assertThat(diameter.relativeUncertainty()).as("uncertainty").isBetween(0.0001, 0.003);
  }
}
