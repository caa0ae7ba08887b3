package org.limbspan.limb.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;

/**
 * A condition that runs through its range while all others are those of a good night: a width of 3
 * px, signal to noise 80, no ripple, the Moon 15 to 70 degrees high, phases as in {@link SceneSet}.
 * Easier than that set, which mixes all conditions.
 */
public enum OneCondition {
  PHASE,
  FLATTENING,
  WIDTH,
  NOISE,
  RIPPLE,
  DAY,
  NIGHT,
  CLOUD,
  ROOF,
  BRANCHES,
  PLANET,
  HOT_PIXELS;

  /** A scene of the set that {@link #scenes} draws. */
  public record Drawn(OneCondition condition, MoonScene scene) {}

  /**
   * Scenes over all conditions.
   *
   * @param each how many of each condition: the middles of so many equal parts of its range, of the
   *     noise in its logarithm
   */
  public static List<Drawn> scenes(int each, long seed) {
    List<Drawn> drawn = new ArrayList<>();
    for (OneCondition condition : values()) {
      for (int i = 0; i < each; i++) {
        Random random = new Random(Objects.hash(seed, condition.name(), i));
        MoonScene scene = onAGoodNight(i, random);
        condition.reaches(scene, (i + 0.5) / each, random);
        drawn.add(new Drawn(condition, scene));
      }
    }
    return drawn;
  }

  private static MoonScene onAGoodNight(int index, Random random) {
    MoonScene scene = new MoonScene();
    scene.seed = random.nextInt(1_000_000);
    scene.radiusPx = SceneSet.between(random, 340, 500);
    scene.centreX = 700 + SceneSet.between(random, -120, 120);
    scene.centreY = 560 + SceneSet.between(random, -35, 35);
    scene.illuminated = SceneSet.phase(index, random);
    scene.brightLimbDeg = SceneSet.between(random, 0, 360);
    scene.altitudeDeg = SceneSet.between(random, 15, 70);
    scene.exposure = SceneSet.between(random, 0.3, 0.75);
    scene.relief = SceneSet.relief(random);
    scene.rippleCorrelationDeg = SceneSet.between(random, 0.8, 6);
    scene.lommelSeeliger = SceneSet.between(random, 0.9, 1);
    scene.wing = SceneSet.between(random, 0.01, 0.07);
    return scene;
  }

  /**
   * Sets this condition.
   *
   * @param share of its range, 0 to 1
   */
  private void reaches(MoonScene scene, double share, Random random) {
    switch (this) {
      case PHASE -> scene.illuminated = 0.2 + 0.8 * share;
      case FLATTENING -> scene.altitudeDeg = SceneSet.altitudeFor(0.12 * share);
      case WIDTH -> scene.fwhmPx = 1.5 + 4.5 * share;
      case NOISE -> scene.signalToNoise = 12 * Math.pow(150 / 12.0, share);
      case RIPPLE -> scene.ripplePx = share;
      case DAY -> SceneSet.byDay(scene, 0.5 + 2 * share, SceneSet.between(random, -0.3, 0.3));
      case NIGHT -> scene.sky = 0.006 * share;
      case CLOUD -> scene.cloud = 0.3 + 0.7 * share;
      case ROOF -> scene.roof = 0.08 + 0.22 * share;
      case BRANCHES -> scene.branches = 2 + (int) (7 * share);
      case PLANET -> scene.planet = true;
      case HOT_PIXELS -> scene.hotPixels = 40 + (int) (300 * share);
    }
  }
}
