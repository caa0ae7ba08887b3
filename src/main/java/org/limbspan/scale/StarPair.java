package org.limbspan.scale;

import java.util.List;

/**
 * Two stars of known separation in one photograph.
 *
 * @param separationArcmin angle between them as seen (refraction included), greater than 0 and
 *     below 10800, in arcminutes
 * @param separationUncertaintyArcmin its standard uncertainty, 0 or more
 */
public record StarPair(double separationArcmin, double separationUncertaintyArcmin)
    implements Reference {

  private static final double HALF_TURN_ARCMIN = 180 * 60;

  public StarPair {
    Angles.requirePositive("separationArcmin", separationArcmin);
    if (separationArcmin >= HALF_TURN_ARCMIN) {
      throw new IllegalArgumentException(
          "separationArcmin " + separationArcmin + ": expected below " + HALF_TURN_ARCMIN);
    }
    Angles.requireUncertainty(
        "separationUncertaintyArcmin", separationUncertaintyArcmin, separationArcmin);
  }

  @Override
  public double angleArcsec() {
    return separationArcmin * 60;
  }

  @Override
  public List<SharedError> sharedErrors() {
    return List.of(
        new SharedError(
            new SharedError.Source(
                SharedError.Kind.STAR_SEPARATION, separationArcmin, separationUncertaintyArcmin),
            separationUncertaintyArcmin / separationArcmin));
  }
}
