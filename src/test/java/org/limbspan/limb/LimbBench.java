package org.limbspan.limb;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.MoonScene;
import org.limbspan.limb.render.SceneSet;
import org.limbspan.sky.Refraction;

/**
 * How exact the measurement is: renders a seeded set of scenes, measures each knowing nothing,
 * expecting the flattening that the Moon's altitude gives, and expecting the phase besides, as the
 * service does; prints errors in percent of the diameter beside the stated uncertainties. Both axes
 * count.
 *
 * <p>Arguments: number of scenes, seed, and a folder that keeps the rendered files (optional).
 */
public final class LimbBench {

  private static final double FLATTENING_ERROR = 1e-4;

  /** Half an hour of the camera's clock: up to 0.0022 of the illuminated fraction. */
  private static final double PHASE_ERROR_RAD = Math.toRadians(0.25);

  /** Of the camera's level, beside the roll that a scene has. */
  private static final double ROLL_ERROR_DEG = 1;

  /** What the service states of it. */
  private static final double ROLL_UNCERTAINTY_RAD = Math.toRadians(2);

  private LimbBench() {}

  public static void main(String[] arguments) throws IOException {
    int count = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 240;
    long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 2;
    Path folder = arguments.length > 2 ? Path.of(arguments[2]) : Path.of("");
    boolean keep = arguments.length > 2;
    ErrorTable served = new ErrorTable("flattening and phase expected, as the service does");
    ErrorTable knowing = new ErrorTable("flattening expected from the altitude");
    ErrorTable blind = new ErrorTable("flattening unknown");
    Random random = new Random(seed);
    Random clock = new Random(seed + 1);
    List<MoonScene> scenes = SceneSet.measurable(count, seed);
    for (int i = 0; i < count; i++) {
      MoonScene scene = scenes.get(i);
      Path file = folder.resolve("scene-" + seed + "-" + i + ".jpg");
      byte[] jpeg;
      if (keep && Files.exists(file)) {
        jpeg = Files.readAllBytes(file);
      } else {
        jpeg = JpegFile.bytes(new MoonRenderer(scene).render(), 86 + i * 7 % 13);
        if (keep) {
          Files.createDirectories(folder);
          Files.write(file, jpeg);
        }
      }
      LinearImage image = linear(jpeg);
      MeasureOptions flattening = expecting(scene, random);
      served.add(i, scene, DiscMeasurer.measure(image, flattening.expecting(phase(scene, clock))));
      knowing.add(i, scene, DiscMeasurer.measure(image, flattening));
      blind.add(i, scene, DiscMeasurer.measure(image, MeasureOptions.standard()));
    }
    blind.print();
    knowing.print();
    served.print();
  }

  static LinearImage linear(byte[] jpeg) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(jpeg));
    return PhotoFiles.linear(image);
  }

  /** What the service would compute for the scene, wrong by what it doubts. */
  static MeasureOptions expecting(MoonScene scene, Random random) {
    double flattening = 1 - scene.verticalDiameterPx() / scene.horizontalDiameterPx();
    double doubt = Refraction.flatteningDoubt(scene.altitudeDeg);
    double sigma = Math.hypot(doubt * flattening, FLATTENING_ERROR);
    double expected = Math.max(0, flattening + sigma * random.nextGaussian());
    return MeasureOptions.standard()
        .expecting(new MeasureOptions.ExpectedFlattening(expected, sigma));
  }

  /** The phase that a wrong clock computes, and its direction on a camera that is not level. */
  static MeasureOptions.ExpectedPhase phase(MoonScene scene, Random clock) {
    double phaseAngle =
        Math.acos(2 * scene.illuminated - 1) + PHASE_ERROR_RAD * clock.nextGaussian();
    double direction = scene.brightLimbDeg + ROLL_ERROR_DEG * clock.nextGaussian();
    return new MeasureOptions.ExpectedPhase(
        (1 + Math.cos(phaseAngle)) / 2,
        PHASE_ERROR_RAD,
        Math.toRadians(direction),
        ROLL_UNCERTAINTY_RAD);
  }
}
