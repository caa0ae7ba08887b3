package org.limbspan.limb.render;

import java.util.Arrays;

/** Brightness of a point of the sphere: albedo, shading by the Sun, rough ground near the edge. */
final class MoonSurface {

  private final ValueNoise ground;
  private final ValueNoise bumps;
  private final double lommelSeeliger;
  private final double roughness;
  private final double markings;
  private final double sunX;
  private final double sunY;
  private final double sunZ;

  MoonSurface(MoonScene scene) {
    ground = new ValueNoise(scene.seed * 31 + 7);
    bumps = new ValueNoise(scene.seed * 17 + 3);
    lommelSeeliger = scene.lommelSeeliger;
    roughness = scene.roughness;
    markings = scene.markings;
    double phase = Math.acos(2 * scene.illuminated - 1);
    double direction = Math.toRadians(scene.brightLimbDeg);
    sunX = Math.sin(phase) * Math.cos(direction);
    sunY = Math.sin(phase) * Math.sin(direction);
    sunZ = Math.cos(phase);
  }

  /** Brightness at a point of the disc; x right, y up, in radii; limb of full Moon about 1. */
  double at(double x, double y) {
    double z = Math.sqrt(Math.max(0, 1 - x * x - y * y));
    double toSun = x * sunX + y * sunY + z * sunZ;
    if (toSun < -0.12) {
      return 0;
    }
    if (toSun < 0.35) {
      toSun += roughness(x, y, z) * Math.min(1, 3 * z);
    }
    if (toSun <= 0) {
      return 0;
    }
    double law = lommelSeeliger * toSun / (toSun + z + 1e-9) + (1 - lommelSeeliger) * toSun;
    return law * albedo(x, y, z);
  }

  /** The 80th percentile of the sunlit brightness: what an exposure is set for. */
  double brightLevel() {
    double[] lit = new double[10000];
    int count = 0;
    for (int j = 0; j < 100; j++) {
      for (int i = 0; i < 100; i++) {
        double x = (i - 49.5) / 50;
        double y = (j - 49.5) / 50;
        double value = x * x + y * y < 1 ? at(x, y) : 0;
        if (value > 0.02) {
          lit[count++] = value;
        }
      }
    }
    Arrays.sort(lit, 0, count);
    return count == 0 ? 1 : lit[count * 8 / 10];
  }

  private double roughness(double x, double y, double z) {
    double step = 0.004;
    double here = bump(x, y, z);
    double slopeX = (bump(x + step, y, z) - here) / step;
    double slopeY = (bump(x, y + step, z) - here) / step;
    double slopeZ = (bump(x, y, z + step) - here) / step;
    return -0.0035 * roughness * (slopeX * sunX + slopeY * sunY + slopeZ * sunZ);
  }

  private double bump(double x, double y, double z) {
    return bumps.fractal(14 * x, 14 * y, 14 * z, 4, 0.6);
  }

  private double albedo(double x, double y, double z) {
    double plains = ground.fractal(2.2 * x + 9, 2.2 * y, 2.2 * z, 4, 0.55);
    double mare = 1 / (1 + Math.exp(-(plains - 0.08) * 14));
    double detail = ground.fractal(18 * x, 18 * y + 5, 18 * z, 3, 0.6);
    return (1 - 0.5 * markings * mare) * (1 + 0.28 * markings * detail);
  }
}
