package org.limbspan.limb.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A seeded set of scenes over the conditions a rig meets: phase 20 to 100 %, flattening 0 to 12 %,
 * width 1.5 to 6 px, signal to noise 12 to 150, ripple 0 to 1 px, by day and by night, with cloud,
 * roof, branches, a planet, hot pixels. Half of the Moons are full or nearly so, as flattened ones
 * at rise and set mostly are. Ripple is small on most nights and 1 px on the worst; the limb's
 * relief is 0.03 to 0.05 % of the radius.
 */
public final class SceneSet {

  private SceneSet() {}

  public static List<MoonScene> measurable(int count, long seed) {
    List<MoonScene> scenes = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      scenes.add(scene(i, new Random(seed * 1_000_003 + i)));
    }
    return scenes;
  }

  private static MoonScene scene(int index, Random random) {
    MoonScene scene = new MoonScene();
    scene.seed = random.nextInt(1_000_000);
    scene.radiusPx = between(random, 340, 500);
    scene.centreX = 700 + between(random, -120, 120);
    scene.centreY = 560 + between(random, -35, 35);
    scene.illuminated = phase(index, random);
    scene.brightLimbDeg = between(random, 0, 360);
    scene.altitudeDeg =
        random.nextDouble() > (index % 4 < 2 ? 0.45 : 0.12)
            ? between(random, 15, 70)
            : altitudeFor(between(random, 0.005, 0.12));
    scene.rollDeg = random.nextInt(3) == 0 ? random.nextGaussian() * 1.2 : 0;
    scene.fwhmPx = between(random, 1.5, 6);
    scene.signalToNoise = 12 * Math.pow(150 / 12.0, random.nextDouble());
    scene.exposure = between(random, 0.3, 0.75);
    scene.ripplePx = random.nextBoolean() ? 0 : Math.pow(random.nextDouble(), 2);
    scene.rippleCorrelationDeg = between(random, 0.8, 6);
    scene.relief = relief(new Random(scene.seed));
    scene.lommelSeeliger = between(random, 0.9, 1);
    scene.wing = between(random, 0.01, 0.07);
    surroundings(scene, random);
    return scene;
  }

  /** Root mean square over the radius. */
  static double relief(Random random) {
    return between(random, 0.0003, 0.0005);
  }

  static double phase(int index, Random random) {
    return switch (index % 4) {
      case 0 -> 1 - 0.0005 * random.nextDouble();
      case 1 -> between(random, 0.96, 0.9995);
      default -> between(random, 0.2, 0.97);
    };
  }

  private static void surroundings(MoonScene scene, Random random) {
    double kind = random.nextDouble();
    if (kind < 0.15) {
      byDay(scene, between(random, 0.5, 2.5), between(random, -0.3, 0.3));
    } else if (kind < 0.27) {
      scene.cloud = between(random, 0.3, 1);
    } else if (kind < 0.37) {
      scene.roof = between(random, 0.08, 0.3);
    } else if (kind < 0.47) {
      scene.branches = 2 + random.nextInt(7);
    } else if (kind < 0.55) {
      scene.planet = true;
    } else if (kind < 0.6) {
      scene.exposure = between(random, 0.75, 1.1);
    } else if (kind < 0.64) {
      scene.sharpening = between(random, 0.2, 0.8);
    } else if (kind < 0.68) {
      scene.lateralColour = between(random, -8e-4, 8e-4);
    }
    if (random.nextInt(4) == 0) {
      scene.hotPixels = 40 + random.nextInt(300);
    }
    if (scene.altitudeDeg < 5) {
      scene.tint = new double[] {1.15, 0.95, 0.6};
    }
  }

  /** A sky that is brighter than a night's, exposed so that it is not clipped. */
  static void byDay(MoonScene scene, double sky, double gradient) {
    scene.sky = sky;
    scene.exposure = 0.7 / (1 + sky);
    scene.skyGradient = gradient;
    scene.tint = new double[] {0.9, 1.0, 1.2};
  }

  /** Altitude at which refraction flattens the disc by that much. */
  static double altitudeFor(double flattening) {
    double low = 0.3;
    double high = 60;
    for (int i = 0; i < 50; i++) {
      double middle = Math.sqrt(low * high);
      double flat = 1 - new SkyBend(middle, 1000).verticalDiameterPx() / 2000;
      if (flat > flattening) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  static double between(Random random, double least, double most) {
    return least + (most - least) * random.nextDouble();
  }
}
