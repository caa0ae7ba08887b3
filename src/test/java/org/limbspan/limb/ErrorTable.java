package org.limbspan.limb;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.limbspan.limb.Measurement.Measured;
import org.limbspan.limb.Measurement.Refused;
import org.limbspan.limb.render.MoonScene;

/**
 * Errors of one way of measuring, in percent of the diameter, beside the stated uncertainties; both
 * axes count.
 */
final class ErrorTable {

  private final String title;
  private final TreeMap<String, List<double[]>> rows = new TreeMap<>();
  private final List<String> notes = new ArrayList<>();
  private int refused;

  ErrorTable(String title) {
    this.title = title;
  }

  /** Counts a photograph by its phase and surroundings. */
  void add(int index, MoonScene scene, Measurement measurement) {
    add(index, scene, measurement, List.of(phase(scene), surroundings(scene)));
  }

  /** Counts a photograph in all and in those classes. */
  void add(int index, MoonScene scene, Measurement measurement, List<String> classes) {
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
      for (String each : classes) {
        rows.computeIfAbsent(each, k -> new ArrayList<>()).add(e);
      }
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
        scene.illuminated > 0.9994 ? "full" : scene.illuminated > 0.96 ? "nearly full" : "partial";
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
                            : scene.lateralColour != 0 ? "with: lateral colour" : "with: clear sky";
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
    rows.forEach(ErrorTable::print);
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
