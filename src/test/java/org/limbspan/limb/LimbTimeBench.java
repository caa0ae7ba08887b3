package org.limbspan.limb;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.MoonScene;

/**
 * Where the time goes on a photograph of 12 megapixels: processor time of one thread, warm,
 * decoding apart. Arguments: number of measured rounds.
 */
public final class LimbTimeBench {

  private static final int WARM_UP = 6;

  private final Map<String, Long> spent = new LinkedHashMap<>();
  private long mark;

  public static void main(String[] arguments) throws IOException {
    int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 8;
    for (double illuminated : new double[] {1, 0.985, 0.6}) {
      byte[] jpeg = JpegFile.bytes(new MoonRenderer(scene(illuminated)).render(), 92);
      LimbTimeBench bench = new LimbTimeBench();
      for (int i = 0; i < WARM_UP + rounds; i++) {
        if (i == WARM_UP) {
          bench.spent.clear();
        }
        bench.round(jpeg);
      }
      System.out.printf(Locale.ROOT, "12 MP, lit %.3f; ms of one core%n", illuminated);
      bench.spent.forEach(
          (stage, nanos) ->
              System.out.printf(Locale.ROOT, "  %-28s %7.1f%n", stage, nanos / 1e6 / rounds));
    }
  }

  private static MoonScene scene(double illuminated) {
    MoonScene scene = new MoonScene();
    scene.width = 4000;
    scene.height = 3000;
    scene.centreX = 1987.3;
    scene.centreY = 1511.2;
    scene.radiusPx = 1100;
    scene.altitudeDeg = 25;
    scene.illuminated = illuminated;
    scene.relief = 0.0003;
    return scene;
  }

  private void round(byte[] jpeg) throws IOException {
    mark = now();
    LinearImage image = LimbBench.linear(jpeg);
    lap("decoding and linear light");
    long from = mark;
    MoonFinder.Found found = MoonFinder.find(image).orElseThrow();
    lap("finding the disc");
    FirstOutline first = FirstOutline.of(image, found.outline()).orElseThrow();
    lap("first outline");
    LitArea lit = new LitArea(image, first.outline());
    Fitness.beforeTracing(first, lit, MeasureOptions.standard());
    lap("lit area and refusals");
    LimbTrace trace =
        new LimbTrace(
            image,
            first,
            lit,
            new FlatteningPrior(Optional.empty()),
            PhasePrior.agreeing(Optional.empty(), lit));
    trace.run();
    lap("tracing the limb");
    new Assessment(trace, lit).measured();
    lap("assessment");
    spent.merge("measuring, all", mark - from, Long::sum);
  }

  private void lap(String stage) {
    long now = now();
    spent.merge(stage, now - mark, Long::sum);
    mark = now;
  }

  private static long now() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }
}
