package org.limbspan.limb.render;

import java.util.Random;

/** Everything in the picture that is not the Moon: sky, cloud, roof, branches, a planet. */
final class SkyAndForeground {

  private final MoonScene scene;
  private final ValueNoise clouds;
  private final double[][] branches;
  private final double planetX;
  private final double planetY;

  SkyAndForeground(MoonScene scene) {
    this.scene = scene;
    clouds = new ValueNoise(scene.seed * 101 + 11);
    Random random = new Random(scene.seed + 77);
    branches = new double[scene.branches][];
    for (int i = 0; i < branches.length; i++) {
      double angle = random.nextDouble() * Math.PI;
      double offset = (random.nextDouble() * 2 - 1) * 0.95 * scene.radiusPx;
      branches[i] =
          new double[] {Math.cos(angle), Math.sin(angle), offset, 2 + 7 * random.nextDouble()};
    }
    double side = random.nextDouble() * 2 * Math.PI;
    planetX = scene.centreX + 1.15 * scene.radiusPx * Math.cos(side);
    planetY = scene.centreY + 1.15 * scene.radiusPx * Math.sin(side);
  }

  double glow(int x, int y) {
    double across = x / (double) scene.width - 0.5;
    double glow = scene.sky + scene.skyGradient * across;
    glow += scene.cloud * 0.10 * thickness(x, y);
    if (scene.planet && Math.hypot(x - planetX, y - planetY) < 4.5) {
      glow += 1.2;
    }
    return Math.max(0, glow);
  }

  double cloudTransmission(int x, int y) {
    return scene.cloud == 0 ? 1 : 1 - Math.min(0.8, 0.75 * scene.cloud * thickness(x, y));
  }

  /** 0 behind roof or branch, else 1. */
  double clear(double x, double y) {
    double dx = x - scene.centreX;
    double dy = y - scene.centreY;
    if (scene.roof > 0 && dy - 0.22 * dx > (1 - 2 * scene.roof) * scene.radiusPx) {
      return 0;
    }
    for (double[] b : branches) {
      double along = dx * b[0] + dy * b[1];
      double bend = 0.12 * scene.radiusPx * Math.sin(along / scene.radiusPx * 2.2 + b[2]);
      if (Math.abs(-dx * b[1] + dy * b[0] - b[2] - bend) < b[3] / 2) {
        return 0;
      }
    }
    return 1;
  }

  private double thickness(int x, int y) {
    double scale = 1.6 / scene.radiusPx;
    double n = clouds.fractal(x * scale, y * scale * 2, 0.5, 5, 0.55);
    return Math.max(0, Math.min(1, 0.5 + 1.2 * n));
  }
}
