package org.limbspan.sky;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One visit of the Moon above a site's horizon, about one culmination: its greatest altitude
 * between two least ones. The Moon rises and sets when its upper limb stands at the astronomical
 * horizon, in refraction of 34 arcminutes, with the Moon's own semidiameter and parallax; dip and
 * terrain are left out.
 *
 * <p>Where the Moon does not set between two culminations (high latitudes), each of them is a pass
 * of its own: the earlier without set, the later without rise.
 *
 * @param rise the Moon at its rise; empty if it was up at the least altitude before
 * @param culmination the Moon at its greatest altitude
 * @param set the Moon at its set; empty if it is up at the least altitude after
 */
public record Pass(Optional<MoonSight> rise, MoonSight culmination, Optional<MoonSight> set) {

  /** A pass over a pole lasts for days; what is nearer to culmination than this is of one day. */
  private static final Duration HALF_A_TURN = Duration.ofHours(13);

  public Pass {
    rise.ifPresent(sight -> requireOrder(sight, culmination));
    set.ifPresent(sight -> requireOrder(culmination, sight));
  }

  private static void requireOrder(MoonSight first, MoonSight second) {
    if (first.at().isAfter(second.at())) {
      throw new IllegalArgumentException(
          "pass " + first.at() + ": expected to be no later than " + second.at());
    }
  }

  public Optional<Instant> riseAt() {
    return rise.map(MoonSight::at);
  }

  public Instant culminationAt() {
    return culmination.at();
  }

  public Optional<Instant> setAt() {
    return set.map(MoonSight::at);
  }

  /** The rise, and no more than 13 h before the culmination. */
  public Instant startAt() {
    Instant earliest = culminationAt().minus(HALF_A_TURN);
    return riseAt().filter(earliest::isBefore).orElse(earliest);
  }

  /** The set, and no more than 13 h after the culmination. */
  public Instant endAt() {
    Instant latest = culminationAt().plus(HALF_A_TURN);
    return setAt().filter(latest::isAfter).orElse(latest);
  }

  /** Greatest altitude of the Moon's centre without refraction. */
  public double culminationAltitudeDeg() {
    return culmination.altitudeDeg();
  }

  /** The same with refraction, in the site's mean air. */
  public double culminationApparentAltitudeDeg() {
    return culmination.apparentAltitudeDeg();
  }

  /** Horizontal diameter at rise. */
  public OptionalDouble diameterAtRiseArcmin() {
    return horizontalDiameterArcmin(rise);
  }

  /** Horizontal diameter at culmination. */
  public double diameterAtCulminationArcmin() {
    return culmination.horizontalDiameterArcmin();
  }

  /** Horizontal diameter at set. */
  public OptionalDouble diameterAtSetArcmin() {
    return horizontalDiameterArcmin(set);
  }

  /**
   * Horizontal diameter at culmination over that at rise; empty without a rise. Where a pass lasts
   * for days, near the poles, the Moon's own change of distance outweighs the Earth's radius in it.
   */
  public OptionalDouble predictedRatio() {
    return rise.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(diameterAtCulminationArcmin() / rise.get().horizontalDiameterArcmin());
  }

  private static OptionalDouble horizontalDiameterArcmin(Optional<MoonSight> sight) {
    return sight.stream().mapToDouble(MoonSight::horizontalDiameterArcmin).findFirst();
  }
}
