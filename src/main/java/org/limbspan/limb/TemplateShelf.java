package org.limbspan.limb;

import java.util.HashMap;
import java.util.Map;

/**
 * The expected light across the limb for every height of the Sun over it, made once for heights
 * that hardly differ: a step is 0.002 in the sine at the horizon, where the light depends on it
 * most, and 4 % of the sine high above.
 */
final class TemplateShelf {

  private static final double LOW = 0.05;
  private static final double STEPS = 25;

  private final EdgeShape shape;
  private final Illumination light;
  private final double radius;
  private final double reach;
  private final int patches;
  private final Map<Integer, EdgeTemplate> made = new HashMap<>();

  /**
   * @param radius of the disc, pixels
   * @param reach largest depth that will be asked for, pixels
   * @param patches of the ground
   */
  TemplateShelf(EdgeShape shape, Illumination light, double radius, double reach, int patches) {
    this.shape = shape;
    this.light = light;
    this.radius = radius;
    this.reach = reach;
    this.patches = patches;
  }

  /** For a place on the limb by its angle, radians. */
  EdgeTemplate at(double angleRad) {
    double sun = light.sunOverLimb(angleRad) / LOW;
    double asinh = Math.copySign(Math.log(Math.abs(sun) + Math.hypot(1, sun)), sun);
    return made.computeIfAbsent((int) Math.round(STEPS * asinh), this::make);
  }

  private EdgeTemplate make(int step) {
    return new EdgeTemplate(shape, light, LOW * Math.sinh(step / STEPS), radius, reach, patches);
  }
}
