package org.limbspan.cycle;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Distance of the Moon's centre from the Earth's, in equatorial Earth radii, as the growth of the
 * disc with altitude tells it.
 *
 * @param parallax Earth's radius over the distance: what is measured, nearly normal in its error
 * @param earthRadii its inverse; empty where the parallax is not three uncertainties above zero
 * @param leastEarthRadii inverse of parallax + 2 uncertainties
 * @param mostEarthRadii inverse of parallax - 2 uncertainties; empty where that is not above zero
 */
public record MoonDistance(
    Estimate parallax,
    Optional<Estimate> earthRadii,
    double leastEarthRadii,
    OptionalDouble mostEarthRadii) {

  private static final double LEAST_PARALLAX = 1e-6;

  static MoonDistance of(Estimate parallax) {
    double value = parallax.value();
    double u = parallax.uncertainty();
    Optional<Estimate> inverse =
        value > 3 * u
            ? Optional.of(new Estimate(1 / value, u / (value * value)))
            : Optional.empty();
    return new MoonDistance(
        parallax,
        inverse,
        1 / Math.max(LEAST_PARALLAX, value + 2 * u),
        value - 2 * u > LEAST_PARALLAX
            ? OptionalDouble.of(1 / (value - 2 * u))
            : OptionalDouble.empty());
  }
}
