package org.limbspan.limb;

/**
 * The terminator of a partly lit Moon whose Sun is the computed one, where it meets the limb.
 *
 * <p>With c the cosine of the phase angle and t the sine of the Sun's depth below a place of the
 * limb, the phase law (see {@link Illumination}) reaches half of the brightness that it has far
 * inside where the cosine of the angle of view is {@code t (2 + c) / (c (1 + c))}.
 */
final class ComputedTerminator implements Terminator {

  /** Uneven ground moves that place by a tenth of itself. */
  private static final double UNEVEN = 0.1;

  /** Sine of the slope, along the view, of ground that is still level on average. */
  private static final double SLOPE = 0.02;

  private final Illumination light;
  private final double radius;
  private final PhasePrior phase;
  private final double turnRad;
  private final double steepness;

  /**
   * @param phase known
   * @param turnRad of the Sun from its computed direction, as the limb has told it so far
   * @param radius of the disc, pixels
   */
  ComputedTerminator(PhasePrior phase, double turnRad, double radius) {
    this.light = phase.light(turnRad);
    this.radius = radius;
    this.phase = phase;
    this.turnRad = turnRad;
    double c = light.towardsViewer();
    steepness = c > 0.05 ? (2 + c) / (c * (1 + c)) : Double.POSITIVE_INFINITY;
  }

  @Override
  public double hidden(double angleRad) {
    return strip(light.sunOverLimb(angleRad));
  }

  @Override
  public double hiddenByTurn(double angleRad) {
    double sun = light.sunOverLimb(angleRad);
    double across = light.towardsX() * Math.sin(angleRad) - light.towardsY() * Math.cos(angleRad);
    return (strip(sun + 0.01 * across) - strip(sun - 0.01 * across)) / 0.02;
  }

  @Override
  public double roughness(double angleRad) {
    double sun = light.sunOverLimb(angleRad) - SLOPE;
    return sun >= 0 ? 0 : 2 * UNEVEN * Math.min(5, steepness) * strip(sun);
  }

  private double strip(double sunOverLimb) {
    double m = sunOverLimb >= 0 ? 0 : Math.min(0.6, -steepness * sunOverLimb);
    return radius * (1 - Math.sqrt(1 - m * m));
  }

  @Override
  public double doubt() {
    return phase.stripDoubt(light.towardsX(), light.towardsY());
  }

  @Override
  public double turnRad() {
    return turnRad;
  }

  @Override
  public double turnDoubtRad() {
    return phase.turnDoubtRad();
  }

  @Override
  public boolean isExpected() {
    return true;
  }

  @Override
  public double excess() {
    return 0;
  }
}
