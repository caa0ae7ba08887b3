package org.limbspan.limb;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.limbspan.limb.Measurement.Measured;
import org.limbspan.limb.Measurement.Refused;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.MoonScene;
import org.limbspan.limb.render.SceneSet;

/**
 * How exact the measurement is: renders a seeded set of scenes, measures each knowing nothing,
 * expecting the flattening that the Moon's altitude gives, and expecting the phase besides, as the
 * service does; prints errors in percent of the diameter beside the stated uncertainties. Both axes
 * count.
 *
 * <p>Arguments: number of scenes, seed, and a folder that keeps the rendered files (optional).
 */
public final class LimbBench {

  /** Refraction at an altitude is known to a few percent: temperature, pressure, inversions. */
  private static final double REFRACTION_ERROR = 0.03;

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
    Table served = new Table("flattening and phase expected, as the service does");
    Table knowing = new Table("flattening expected from the altitude");
    Table blind = new Table("flattening unknown");
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

  /** What an observer of the scene would compute, wrong by what refraction leaves open. */
  private static MeasureOptions expecting(MoonScene scene, Random random) {
    double flattening = 1 - scene.verticalDiameterPx() / scene.horizontalDiameterPx();
    double sigma = Math.hypot(REFRACTION_ERROR * flattening, FLATTENING_ERROR);
    double expected = Math.max(0, flattening + sigma * random.nextGaussian());
    return MeasureOptions.standard()
        .expecting(new MeasureOptions.ExpectedFlattening(expected, sigma));
  }

  /** The phase that a wrong clock computes, and its direction on a camera that is not level. */
  private static MeasureOptions.ExpectedPhase phase(MoonScene scene, Random clock) {
    double phaseAngle =
        Math.acos(2 * scene.illuminated - 1) + PHASE_ERROR_RAD * clock.nextGaussian();
    double direction = scene.brightLimbDeg + ROLL_ERROR_DEG * clock.nextGaussian();
    return new MeasureOptions.ExpectedPhase(
        (1 + Math.cos(phaseAngle)) / 2,
        PHASE_ERROR_RAD,
        Math.toRadians(direction),
        ROLL_UNCERTAINTY_RAD);
  }

  /** Errors of one way of measuring. */
  private static final class Table {

    private final String title;
    private final TreeMap<String, List<double[]>> rows = new TreeMap<>();
    private final List<String> notes = new ArrayList<>();
    private int refused;

    Table(String title) {
      this.title = title;
    }

    void add(int index, MoonScene scene, Measurement measurement) {
      if (measurement instanceof Refused no) {
        refused++;
        notes.add(describe(index, scene) + " refused: " + no);
        return;
      }
      Measured disc = (Measured) measurement;
      double[] h = {
        100 * (disc.horizontal().valuePx() / scene.horizontalDiameterPx() - 1),
        100 * disc.horizontal().uncertaintyPx() / scene.horizontalDiameterPx()
      };
      double[] v = {
        100 * (disc.vertical().valuePx() / scene.verticalDiameterPx() - 1),
        100 * disc.vertical().uncertaintyPx() / scene.verticalDiameterPx()
      };
      for (double[] e : List.of(h, v)) {
        rows.computeIfAbsent("all", k -> new ArrayList<>()).add(e);
        rows.computeIfAbsent(phase(scene), k -> new ArrayList<>()).add(e);
        rows.computeIfAbsent(surroundings(scene), k -> new ArrayList<>()).add(e);
      }
      if (isNotable(h) || isNotable(v)) {
        notes.add(
            describe(index, scene)
                + String.format(
                    Locale.ROOT,
                    " | h %+.3f (u %.3f) v %+.3f (u %.3f) arc %.0f fwhm %.2f ripple %.2f",
                    h[0],
                    h[1],
                    v[0],
                    v[1],
                    disc.limbArcDeg(),
                    disc.edgeFwhmPx(),
                    disc.ripplePx()));
      }
    }

    private static boolean isNotable(double[] e) {
      return Math.abs(e[0]) > 0.1 || Math.abs(e[0]) > 3 * e[1];
    }

    private static String phase(MoonScene scene) {
      String phase =
          scene.illuminated > 0.9994
              ? "full"
              : scene.illuminated > 0.96 ? "nearly full" : "partial";
      return phase + (scene.altitudeDeg < 12 ? ", low" : ", high");
    }

    private static String surroundings(MoonScene scene) {
      return scene.sky > 0.3
          ? "with: day"
          : scene.cloud > 0
              ? "with: cloud"
              : scene.roof > 0
                  ? "with: roof"
                  : scene.branches > 0
                      ? "with: branches"
                      : scene.exposure > 0.75
                          ? "with: over-exposure"
                          : scene.sharpening > 0
                              ? "with: sharpening"
                              : scene.lateralColour != 0
                                  ? "with: lateral colour"
                                  : "with: clear sky";
    }

    private static String describe(int index, MoonScene s) {
      return String.format(
          Locale.ROOT,
          "%3d k %.4f dir %3.0f alt %4.1f fwhm %.1f snr %3.0f ripple %.2f/%.1f %s exp %.2f R %.0f",
          index,
          s.illuminated,
          s.brightLimbDeg,
          s.altitudeDeg,
          s.fwhmPx,
          s.signalToNoise,
          s.ripplePx,
          s.rippleCorrelationDeg,
          surroundings(s),
          s.exposure,
          s.radiusPx);
    }

    void print() {
      System.out.println("\n" + title + "; errors in percent of the diameter");
      System.out.printf(
          "%-22s %5s %7s %7s %7s %7s %7s %7s%n",
          "", "n", "median", "p90", "p95", "max", "mean", "z rms");
      rows.forEach(Table::print);
      long beyond =
          rows.getOrDefault("all", List.of()).stream()
              .filter(e -> Math.abs(e[0]) > 0.1 && Math.abs(e[0]) > 3 * e[1])
              .count();
      System.out.printf(
          "refused %d; beyond 0.1 %% and 3 of its uncertainties: %d%n", refused, beyond);
      notes.forEach(System.out::println);
    }

    private static void print(String name, List<double[]> errors) {
      double[] size = errors.stream().mapToDouble(e -> Math.abs(e[0])).sorted().toArray();
      double mean = errors.stream().mapToDouble(e -> e[0]).average().orElse(0);
      double square =
          errors.stream().mapToDouble(e -> e[0] * e[0] / (e[1] * e[1])).average().orElse(0);
      System.out.printf(
          Locale.ROOT,
          "%-22s %5d %7.4f %7.4f %7.4f %7.4f %+7.4f %7.2f%n",
          name,
          size.length,
          size[size.length / 2],
          size[(int) (0.9 * (size.length - 1))],
          size[(int) (0.95 * (size.length - 1))],
          size[size.length - 1],
          mean,
          Math.sqrt(square));
    }
  }
}
