package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.limb.Measurement.Measured;
import org.limbspan.limb.Measurement.Refused;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.MoonScene;

class DiscMeasurerTest {

  private static MoonScene scene() {
    MoonScene scene = new MoonScene();
    scene.width = 800;
    scene.height = 700;
    scene.centreX = 402.3;
    scene.centreY = 348.9;
    scene.radiusPx = 260;
    scene.altitudeDeg = 40;
    return scene;
  }

  private static Measurement measure(MoonScene scene) {
    return DiscMeasurer.measure(
        PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92)),
        MeasureOptions.standard());
  }

  private static void refuses(MoonScene scene, Refusal reason) {
    Measurement measurement = measure(scene);
    assertThat(measurement).isInstanceOf(Refused.class);
    assertThat(((Refused) measurement).reason()).isEqualTo(reason);
  }

  @Test
  void measuresAFlattenedMoonAlongBothAxes() {
    MoonScene scene = scene();
    scene.altitudeDeg = 2.5;
    Measured disc = (Measured) measure(scene);

    assertThat(disc.horizontal().valuePx() / scene.horizontalDiameterPx())
        .isBetween(0.9988, 1.0012);
    assertThat(disc.vertical().valuePx() / scene.verticalDiameterPx()).isBetween(0.9988, 1.0012);
    assertThat(disc.outline().asymmetry()).isPositive();
  }

  @Test
  void usesOnlyTheSunlitLimb() {
    MoonScene scene = scene();
    scene.illuminated = 0.6;
    scene.brightLimbDeg = 180;
    Measured disc = (Measured) measure(scene);

    assertThat(disc.limbArcDeg()).isBetween(120.0, 190.0);
    assertThat(disc.usedArcs())
        .allSatisfy(
            arc -> {
              assertThat(arc.fromDeg()).isGreaterThan(85);
              assertThat(arc.toDeg()).isLessThan(275);
            });
    assertThat(disc.vertical().valuePx() / scene.verticalDiameterPx()).isBetween(0.998, 1.002);
  }

  /** On a clean slope of light there are more edges of noise than of the limb. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.3})
  void findsAPhaseWithoutMarkings(double roughness) {
    MoonScene scene = scene();
    scene.markings = 0;
    scene.roughness = roughness;
    scene.illuminated = 0.6;
    scene.brightLimbDeg = 40;
    scene.signalToNoise = 150;
    Measured disc = (Measured) measure(scene);

    assertThat(disc.horizontal().valuePx() / scene.horizontalDiameterPx())
        .isBetween(0.9995, 1.0005);
  }

  @Test
  void statesMorePixelsForASmallDiscWhosePatchesOfGroundAreNoLargerThanTheEdge() {
    MoonScene large = scene();
    large.illuminated = 0.6;
    MoonScene small = scene();
    small.illuminated = 0.6;
    small.radiusPx = 70;

    assertThat(((Measured) measure(small)).horizontal().modelPx())
        .isGreaterThan(((Measured) measure(large)).horizontal().modelPx() + 0.05);
  }

  @Test
  void keepsItsUncertaintyAboveTheReliefOfTheLimb() {
    Measured disc = (Measured) measure(scene());

    assertThat(disc.horizontal().reliefPx() / disc.horizontal().valuePx()).isGreaterThan(0.0001);
    assertThat(disc.horizontal().uncertaintyPx()).isGreaterThan(disc.horizontal().reliefPx());
  }

  @Test
  void takesTheExpectedFlatteningIntoAccountWhereTheLimbLeavesItOpen() {
    MoonScene scene = scene();
    scene.altitudeDeg = 6;
    scene.illuminated = 0.5;
    scene.brightLimbDeg = 0;
    double flattening = 1 - scene.verticalDiameterPx() / scene.horizontalDiameterPx();
    LinearImage image = PhotoFiles.linear(new MoonRenderer(scene).render());
    MeasureOptions informed =
        MeasureOptions.standard()
            .expecting(new MeasureOptions.ExpectedFlattening(flattening, 0.0005));
    Measured without = (Measured) DiscMeasurer.measure(image, MeasureOptions.standard());
    Measured with = (Measured) DiscMeasurer.measure(image, informed);

    assertThat(with.flatteningUncertainty()).isLessThan(without.flatteningUncertainty());
    assertThat(with.outline().flattening()).isBetween(flattening - 0.0015, flattening + 0.0015);
  }

  @Test
  void tellsTheTerminatorByTheExpectedPhase() {
    MoonScene scene = scene();
    scene.illuminated = 0.9985;
    scene.brightLimbDeg = 160;
    scene.fwhmPx = 5;
    scene.relief = 0;
    LinearImage image = PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92));
    Measured disc =
        (Measured) DiscMeasurer.measure(image, expecting(scene.illuminated, scene.brightLimbDeg));

    assertThat(disc.horizontal().valuePx() / scene.horizontalDiameterPx())
        .isBetween(0.9994, 1.0006);
    assertThat(disc.vertical().valuePx() / scene.verticalDiameterPx()).isBetween(0.9994, 1.0006);
    assertThat(disc.illuminatedFraction()).isBetween(0.997, 0.9995);
  }

  /** The strip in shadow is narrower than the edge all round. */
  @Test
  void usesTheWholeLimbOfAMoonThatIsAllButFull() {
    MoonScene scene = scene();
    scene.illuminated = 0.9995;
    scene.brightLimbDeg = 160;
    LinearImage image = PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92));
    Measured disc =
        (Measured) DiscMeasurer.measure(image, expecting(scene.illuminated, scene.brightLimbDeg));

    assertThat(disc.limbArcDeg()).isGreaterThan(350);
  }

  /** A camera's clock that is half a month off, or a picture turned upside down. */
  @ParameterizedTest
  @ValueSource(doubles = {0.45, 0.8, 0.97, 0.99})
  void believesThePhotographRatherThanAPhaseThatContradictsIt(double illuminated) {
    MoonScene scene = scene();
    scene.illuminated = illuminated;
    scene.brightLimbDeg = 25;
    LinearImage image = PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92));
    Measured alone = (Measured) DiscMeasurer.measure(image, MeasureOptions.standard());
    Measured misled =
        (Measured) DiscMeasurer.measure(image, expecting(illuminated, scene.brightLimbDeg + 180));

    agrees(misled.horizontal(), scene.horizontalDiameterPx());
    agrees(misled.vertical(), scene.verticalDiameterPx());
    assertThat(misled.horizontal().valuePx() / alone.horizontal().valuePx())
        .isBetween(0.9998, 1.0002);
    assertThat(misled.vertical().valuePx() / alone.vertical().valuePx()).isBetween(0.9998, 1.0002);
    assertThat(misled.illuminatedFraction()).isBetween(illuminated - 0.12, illuminated + 0.02);
  }

  /** At 99.5 percent the strip in shadow is hardly wider than the edge. */
  @ParameterizedTest
  @CsvSource({"0.98, 150", "0.985, 90", "0.99, 60", "0.995, 90", "0.995, 180"})
  void noticesACameraThatIsTurned(double illuminated, double turnDeg) {
    MoonScene scene = scene();
    scene.illuminated = illuminated;
    scene.brightLimbDeg = 25;
    LinearImage image = PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92));
    Measured misled = (Measured) DiscMeasurer.measure(image, expecting(illuminated, 25 + turnDeg));

    agrees(misled.horizontal(), scene.horizontalDiameterPx());
    agrees(misled.vertical(), scene.verticalDiameterPx());
  }

  /**
   * The first outline runs along the terminator where the Moon is low, flattened and nearly full:
   * beside it every Sun looks wrong, also the one that was computed right.
   */
  @ParameterizedTest
  @CsvSource({"0.972, 2, 274, 4.5", "0.98, 1, 244, 4.2", "0.975, 3.5, 99, 3.4"})
  void believesAPhaseThatTheFirstOutlineDoesNotShow(
      double illuminated, double altitudeDeg, double brightLimbDeg, double fwhmPx) {
    MoonScene scene = scene();
    scene.illuminated = illuminated;
    scene.altitudeDeg = altitudeDeg;
    scene.brightLimbDeg = brightLimbDeg;
    scene.fwhmPx = fwhmPx;
    LinearImage image = PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92));
    Measured disc = (Measured) DiscMeasurer.measure(image, expecting(illuminated, brightLimbDeg));

    agrees(disc.horizontal(), scene.horizontalDiameterPx());
    agrees(disc.vertical(), scene.verticalDiameterPx());
    assertThat(disc.illuminatedFraction()).isCloseTo(illuminated, within(0.001));
  }

  /** A full Moon on the photograph, another phase by the clock, and the other way round. */
  @ParameterizedTest
  @CsvSource({"1, 0.93", "1, 0.6", "0.93, 1", "0.7, 1", "0.8, 0.3"})
  void believesThePhotographRatherThanAClockThatIsDaysOff(double illuminated, double computed) {
    MoonScene scene = scene();
    scene.illuminated = illuminated;
    scene.brightLimbDeg = 25;
    LinearImage image = PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 92));
    Measured misled = (Measured) DiscMeasurer.measure(image, expecting(computed, 25));

    agrees(misled.horizontal(), scene.horizontalDiameterPx());
    agrees(misled.vertical(), scene.verticalDiameterPx());
  }

  private static MeasureOptions expecting(double illuminated, double brightLimbDeg) {
    return MeasureOptions.standard()
        .expecting(
            new MeasureOptions.ExpectedPhase(
                illuminated, 0.004, Math.toRadians(brightLimbDeg), Math.toRadians(2)));
  }

  private static void agrees(Diameter diameter, double truth) {
    double allowed = Math.min(0.002 * truth, 3 * diameter.uncertaintyPx());
    assertThat(diameter.valuePx() - truth).as("error in pixels").isBetween(-allowed, allowed);
  }

  @Test
  void refusesAnEmptySky() {
    MoonScene scene = scene();
    scene.illuminated = 0;
    refuses(scene, Refusal.NO_MOON);
  }

  @Test
  void refusesAMoonCutByTheFrame() {
    MoonScene scene = scene();
    scene.centreX = 170;
    refuses(scene, Refusal.CUT_BY_FRAME);
  }

  @Test
  void refusesATinyMoon() {
    MoonScene scene = scene();
    scene.radiusPx = 22;
    refuses(scene, Refusal.TOO_SMALL);
  }

  @Test
  void refusesAThinCrescent() {
    MoonScene scene = scene();
    scene.illuminated = 0.025;
    scene.brightLimbDeg = 250;
    refuses(scene, Refusal.CRESCENT_TOO_THIN);
  }

  @Test
  void refusesATrailedMoon() {
    MoonScene scene = scene();
    scene.trailPx = 26;
    scene.trailDeg = 20;
    refuses(scene, Refusal.TRAILED);
  }

  @Test
  void refusesAMoonOutOfFocus() {
    MoonScene scene = scene();
    scene.fwhmPx = 26;
    refuses(scene, Refusal.OUT_OF_FOCUS);
  }

  /** A roof draws the first outline away, and a width that was taken beside it with it. */
  @Test
  void takesTheWidthOfTheEdgeWhenTheOutlineIsGood() {
    MoonScene scene = new MoonScene();
    scene.centreX = 693.7;
    scene.centreY = 545.4;
    scene.radiusPx = 475;
    scene.altitudeDeg = 53.9;
    scene.lommelSeeliger = 0.9;
    scene.exposure = 0.36;
    scene.roof = 0.2175;
    scene.illuminated = 0.9993;
    scene.brightLimbDeg = 278.45;
    scene.seed = 870245;
    Measured disc =
        (Measured)
            DiscMeasurer.measure(
                PhotoFiles.linear(JpegFile.through(new MoonRenderer(scene).render(), 95)),
                MeasureOptions.standard()
                    .expecting(
                        new MeasureOptions.ExpectedPhase(
                            scene.illuminated,
                            Math.toRadians(0.5),
                            Math.toRadians(scene.brightLimbDeg),
                            Math.toRadians(1.5))));

    assertThat(disc.edgeFwhmPx()).isCloseTo(scene.fwhmPx, within(0.15));
    assertThat(disc.horizontal().valuePx())
        .isCloseTo(scene.horizontalDiameterPx(), within(0.0003 * scene.horizontalDiameterPx()));
  }

  @Test
  void refusesABurntOutMoon() {
    MoonScene scene = scene();
    scene.exposure = 9;
    refuses(scene, Refusal.OVEREXPOSED);
  }
}
