package org.limbspan.limb.render;

import java.util.Random;

/**
 * A periodic Gaussian random function of the position angle with Gaussian correlation {@code
 * exp(-delta^2 / 2 L^2)}: seeing ripple and limb relief.
 */
final class LimbNoise {

  private static final int STEPS = 7200;
  private final float[] values = new float[STEPS];

  /** Zero mean is not enforced: a real limb or an instant's seeing has a mean of its own. */
  LimbNoise(double rms, double correlationDeg, long seed) {
    if (rms == 0) {
      return;
    }
    Random random = new Random(seed);
    double length = Math.toRadians(correlationDeg);
    int most = (int) Math.min(1500, Math.ceil(5 / length));
    double[] power = new double[most + 1];
    double total = 0;
    for (int n = 0; n <= most; n++) {
      power[n] = Math.exp(-0.5 * n * n * length * length) * (n == 0 ? 0.5 : 1);
      total += power[n];
    }
    for (int n = 0; n <= most; n++) {
      double scale = rms * Math.sqrt(power[n] / total);
      double c = random.nextGaussian() * scale;
      double s = random.nextGaussian() * scale;
      for (int i = 0; i < STEPS; i++) {
        double angle = 2 * Math.PI * n * i / STEPS;
        values[i] += (float) (c * Math.cos(angle) + s * Math.sin(angle));
      }
    }
  }

  double at(double angleRad) {
    double place = angleRad / (2 * Math.PI);
    place = (place - Math.floor(place)) * STEPS;
    int i = (int) place;
    double f = place - i;
    return values[i % STEPS] * (1 - f) + values[(i + 1) % STEPS] * f;
  }

  double mean() {
    double sum = 0;
    for (float v : values) {
      sum += v;
    }
    return sum / STEPS;
  }
}
