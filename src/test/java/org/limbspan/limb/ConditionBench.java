package org.limbspan.limb;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.OneCondition;

/**
 * What each condition costs: renders scenes in which one condition at a time runs through its
 * range, measures them as the service does, expecting flattening and phase as {@link LimbBench},
 * and prints errors in percent of the diameter beside the stated uncertainties. Both axes count.
 *
 * <p>Arguments: number of scenes of each condition, and seed.
 */
public final class ConditionBench {

  private ConditionBench() {}

  public static void main(String[] arguments) throws IOException {
    int each = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 20;
    long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
    Random random = new Random(seed);
    Random clock = new Random(seed + 1);
    ErrorTable served = new ErrorTable("one condition at a time, as the service does");
    List<OneCondition.Drawn> scenes = OneCondition.scenes(each, seed);
    for (int i = 0; i < scenes.size(); i++) {
      OneCondition.Drawn drawn = scenes.get(i);
      byte[] jpeg = JpegFile.bytes(new MoonRenderer(drawn.scene()).render(), 86 + i * 7 % 13);
      MeasureOptions options =
          LimbBench.expecting(drawn.scene(), random)
              .expecting(LimbBench.phase(drawn.scene(), clock));
      served.add(
          i,
          drawn.scene(),
          DiscMeasurer.measure(LimbBench.linear(jpeg), options),
          List.of(drawn.condition().name().toLowerCase(Locale.ROOT)));
    }
    served.print();
  }
}
