package org.limbspan.limb;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * The circle that most edges lie on, among circles through three of them (random sample consensus,
 * Fischler and Bolles 1981), on an image stretched upwards by the inverse of an assumed flattening.
 * Unlike a fit it does not compromise between limb and terminator.
 */
final class CircleConsensus {

  private static final int TRIALS = 220;
  private static final int ANGLE_BINS = 120;
  private static final double[] FLATTENINGS = {0, 0.025, 0.05, 0.075, 0.1, 0.125, 0.15};

  private final List<EdgePixel> edges;
  private final double tolerance;
  private final double expectedRadius;

  /**
   * @param edges near the candidate, their bright side towards it
   * @param tolerance distance from the circle that still agrees, pixels
   */
  CircleConsensus(List<EdgePixel> edges, double tolerance, double expectedRadius) {
    this.edges = edges;
    this.tolerance = tolerance;
    this.expectedRadius = expectedRadius;
  }

  /** The best outline, or the given one when too few edges agree on any. */
  Outline orElse(Outline start) {
    if (edges.size() < 20) {
      return start;
    }
    Outline best = start;
    double bestScore = 0;
    Random random = new Random(20);
    List<EdgePixel> sample = thinned();
    for (double flattening : FLATTENINGS) {
      double stretch = 1 / (1 - flattening);
      for (int t = 0; t < TRIALS; t++) {
        double[] circle = circle(random, stretch);
        if (circle == null || Math.abs(circle[2] / expectedRadius - 1) > 0.2) {
          continue;
        }
        double score = score(sample, circle, stretch);
        if (score > bestScore) {
          bestScore = score;
          best = new Outline(circle[0], circle[1] / stretch, circle[2], circle[2] / stretch, 0, 0);
        }
      }
    }
    return best;
  }

  private List<EdgePixel> thinned() {
    int step = Math.max(1, edges.size() / 500);
    List<EdgePixel> sample = new ArrayList<>();
    for (int i = 0; i < edges.size(); i += step) {
      sample.add(edges.get(i));
    }
    return sample;
  }

  private double @org.jspecify.annotations.Nullable [] circle(Random random, double stretch) {
    EdgePixel a = edges.get(random.nextInt(edges.size()));
    EdgePixel b = edges.get(random.nextInt(edges.size()));
    EdgePixel c = edges.get(random.nextInt(edges.size()));
    double bx = b.x() - a.x();
    double by = (b.y() - a.y()) * stretch;
    double cx = c.x() - a.x();
    double cy = (c.y() - a.y()) * stretch;
    double twice = 2 * (bx * cy - by * cx);
    if (Math.abs(twice) < 0.3 * expectedRadius * expectedRadius) {
      return null;
    }
    double bb = bx * bx + by * by;
    double cc = cx * cx + cy * cy;
    double x = (cy * bb - by * cc) / twice;
    double y = (bx * cc - cx * bb) / twice;
    return new double[] {x + a.x(), y + a.y() * stretch, Math.sqrt(x * x + y * y)};
  }

  /** Share of the circle's directions that have an edge on it, sharp ones counting more. */
  private double score(List<EdgePixel> sample, double[] circle, double stretch) {
    boolean[] covered = new boolean[ANGLE_BINS];
    double strength = 0;
    int count = 0;
    for (EdgePixel e : sample) {
      double dx = e.x() - circle[0];
      double dy = e.y() * stretch - circle[1];
      double r = Math.sqrt(dx * dx + dy * dy);
      if (Math.abs(r - circle[2]) < tolerance) {
        int bin = (int) ((Math.atan2(dy, dx) / (2 * Math.PI) + 0.5) * ANGLE_BINS) % ANGLE_BINS;
        if (!covered[bin]) {
          covered[bin] = true;
          count++;
        }
        strength += Math.sqrt(e.strength());
      }
    }
    return count * Math.sqrt(strength);
  }
}
