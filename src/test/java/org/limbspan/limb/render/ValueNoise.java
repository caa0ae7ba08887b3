package org.limbspan.limb.render;

/**
 * Smooth lattice noise in three dimensions, seeded: the maria, craters and clouds of the render.
 */
final class ValueNoise {

  private final long seed;

  ValueNoise(long seed) {
    this.seed = seed;
  }

  /** Sum of octaves, each twice as fine as the last and {@code persistence} times as strong. */
  double fractal(double x, double y, double z, int octaves, double persistence) {
    double sum = 0;
    double weight = 1;
    double total = 0;
    double scale = 1;
    for (int i = 0; i < octaves; i++) {
      sum += weight * at(x * scale + 17.1 * i, y * scale - 5.3 * i, z * scale + 3.7 * i);
      total += weight;
      weight *= persistence;
      scale *= 2;
    }
    return sum / total;
  }

  /** One octave, -1 to 1, of unit feature size. */
  double at(double x, double y, double z) {
    int i = (int) Math.floor(x);
    int j = (int) Math.floor(y);
    int k = (int) Math.floor(z);
    double u = ease(x - i);
    double v = ease(y - j);
    double w = ease(z - k);
    double near = plane(i, j, k, u, v);
    return near + w * (plane(i, j, k + 1, u, v) - near);
  }

  private double plane(int i, int j, int k, double u, double v) {
    double low = corner(i, j, k) + u * (corner(i + 1, j, k) - corner(i, j, k));
    double high = corner(i, j + 1, k) + u * (corner(i + 1, j + 1, k) - corner(i, j + 1, k));
    return low + v * (high - low);
  }

  private double corner(int i, int j, int k) {
    long h = seed;
    h = (h ^ i) * 0x9E3779B97F4A7C15L;
    h = (h ^ (h >>> 29) ^ j) * 0xBF58476D1CE4E5B9L;
    h = (h ^ (h >>> 32) ^ k) * 0x94D049BB133111EBL;
    h ^= h >>> 31;
    return (h >> 11) / (double) (1L << 52);
  }

  private static double ease(double t) {
    return t * t * (3 - 2 * t);
  }
}
