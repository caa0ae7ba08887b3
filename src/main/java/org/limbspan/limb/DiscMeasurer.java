package org.limbspan.limb;

import java.util.Optional;
import org.limbspan.limb.Measurement.Refused;

/**
 * Measures the Moon's disc on a photograph.
 *
 * <p>Steps: the disc is found by the normals of its edges; the limb is located in some hundred
 * sectors by fitting the expected light across it; an outline (see {@link Outline}) is adjusted to
 * the sunlit sectors by generalised least squares, with the seeing's ripple estimated from the
 * residuals and the Moon's relief taken as known. The terminator lies inside the outline and is
 * told by its softness; near full Moon the Sun's direction is the computed one, if the photograph
 * does not contradict it, or else is fitted. Of a Moon that is lit from elsewhere nothing that was
 * computed is believed.
 *
 * <p>What is modelled: the half level of a limb that brightens outwards (Lommel-Seeliger law), the
 * width of the edge with the glow beside it, uneven ground and its texture, clipped pixels (left
 * out). What is not and stands in the uncertainty: a camera's own contrast curve, sharpening,
 * lateral colour, distortion of the lens. Of rendered discs of 90 to 130 px of radius, plain and
 * sharpened, the errors are 1.3 of what is stated, root mean square; of larger and smaller ones 0.8
 * to 1.
 */
public final class DiscMeasurer {

  private DiscMeasurer() {}

  /**
   * The disc's diameters, or why there are none.
   *
   * @param image in linear light
   */
  public static Measurement measure(LinearImage image, MeasureOptions options) {
    Optional<MoonFinder.Found> found = MoonFinder.find(image);
    if (found.isEmpty()) {
      return new Refused(Refusal.NO_MOON, 0, "a bright round limb");
    }
    Outline rough = found.get().outline();
    Optional<FirstOutline> first = FirstOutline.of(image, rough);
    if (first.isEmpty()) {
      return Fitness.withoutLimb(image, found.get(), options);
    }
    LitArea lit = new LitArea(image, first.get().outline());
    Optional<Refused> unfit = Fitness.beforeTracing(first.get(), lit, options);
    if (unfit.isPresent()) {
      return unfit.get();
    }
    MeasureOptions believed =
        PhasePrior.isElsewhere(options.phase(), lit) ? options.expectingNothing() : options;
    LimbTrace trace =
        new LimbTrace(
            image,
            first.get(),
            lit,
            new FlatteningPrior(believed.flattening()),
            PhasePrior.agreeing(believed.phase(), lit));
    if (!trace.run()) {
      return Fitness.untraced(trace);
    }
    Measurement.Measured measured = new Assessment(trace, lit).measured();
    return Fitness.afterTracing(image, measured, trace).<Measurement>map(r -> r).orElse(measured);
  }
}
