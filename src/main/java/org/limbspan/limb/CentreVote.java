package org.limbspan.limb;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Where the normals of the edges meet: every edge votes for all centres on its bright side, as in
 * the Hough transform for circles of unknown radius, on an image stretched upwards by the inverse
 * of an assumed flattening. A vote weighs as the square root of the edge's strength: on a soft
 * slope of light there are many edges of noise, and a limb in haze beside a lamp is still heard.
 */
final class CentreVote {

  private static final int CELL = 4;
  private static final int CANDIDATES = 5;
  private static final int ANGLE_BINS = 72;

  private final List<EdgePixel> edges;
  private final double stretch;
  private final int columns;
  private final int rows;
  private final double reach;
  private final float[] votes;

  CentreVote(List<EdgePixel> edges, Thumbnail image, double flattening) {
    this.edges = edges;
    this.stretch = 1 / (1 - flattening);
    reach = 0.75 * Math.max(image.width(), image.height());
    columns = image.width() / CELL + 2;
    rows = (int) (image.height() * stretch / CELL) + 2;
    votes = new float[columns * rows];
  }

  /**
   * A circle of the stretched image that many edges agree on.
   *
   * @param support sum of the weights of the edges on it
   * @param coverage share of its circumference that has an edge, 0 to 1
   */
  record Candidate(
      double x, double y, double radius, double flattening, double support, double coverage) {}

  List<Candidate> candidates() {
    for (EdgePixel edge : edges) {
      vote(edge);
    }
    List<Candidate> found = new ArrayList<>();
    for (int k = 0; k < CANDIDATES; k++) {
      int peak = peak();
      if (votes[peak] <= 0) {
        break;
      }
      double x = (peak % columns + 0.5) * CELL;
      int row = peak / columns;
      double y = (row + 0.5) * CELL;
      Candidate best = bestRadius(x, y);
      if (best.support() > 0) {
        found.add(best);
      }
      clearAround(peak);
    }
    found.sort(Comparator.comparingDouble(Candidate::support).reversed());
    return found;
  }

  private void vote(EdgePixel edge) {
    double[] inward = inward(edge);
    double y = edge.y() * stretch;
    float weight = weight(edge);
    for (double r = 6; r < reach; r += CELL * 0.75) {
      int column = (int) ((edge.x() + r * inward[0]) / CELL);
      int row = (int) ((y + r * inward[1]) / CELL);
      if (column < 1 || row < 1 || column >= columns - 1 || row >= rows - 1) {
        if (r > 40) {
          break;
        }
        continue;
      }
      int at = row * columns + column;
      votes[at] += 2 * weight;
      votes[at - 1] += weight;
      votes[at + 1] += weight;
      votes[at - columns] += weight;
      votes[at + columns] += weight;
    }
  }

  private static float weight(EdgePixel edge) {
    return (float) Math.sqrt(edge.strength());
  }

  private double[] inward(EdgePixel edge) {
    double gx = edge.towardsX();
    double gy = edge.towardsY() / stretch;
    double size = Math.sqrt(gx * gx + gy * gy);
    return new double[] {gx / size, gy / size};
  }

  private int peak() {
    int best = 0;
    for (int i = 1; i < votes.length; i++) {
      if (votes[i] > votes[best]) {
        best = i;
      }
    }
    return best;
  }

  private void clearAround(int peak) {
    int column = peak % columns;
    int row = peak / columns;
    int span = 3;
    for (int j = Math.max(0, row - span); j <= Math.min(rows - 1, row + span); j++) {
      for (int i = Math.max(0, column - span); i <= Math.min(columns - 1, column + span); i++) {
        votes[j * columns + i] = 0;
      }
    }
  }

  /** The radius whose edges that look at the centre weigh most, in bins growing by 4 %. */
  private Candidate bestRadius(double x, double y) {
    int bins = 160;
    double[] support = new double[bins];
    boolean[][] covered = new boolean[bins][ANGLE_BINS];
    for (EdgePixel edge : edges) {
      double dx = edge.x() - x;
      double dy = edge.y() * stretch - y;
      double r = Math.sqrt(dx * dx + dy * dy);
      double[] inward = inward(edge);
      if (r < 4 || -(dx * inward[0] + dy * inward[1]) < 0.9 * r) {
        continue;
      }
      int bin = (int) (Math.log(r / 4) / 0.04);
      int angle = (int) ((Math.atan2(dy, dx) / (2 * Math.PI) + 0.5) * ANGLE_BINS) % ANGLE_BINS;
      for (int b = Math.max(0, bin - 1); b <= Math.min(bins - 1, bin + 1); b++) {
        support[b] += weight(edge);
        covered[b][angle] = true;
      }
    }
    int best = 0;
    for (int b = 1; b < bins; b++) {
      if (support[b] > support[best]) {
        best = b;
      }
    }
    int angles = 0;
    for (boolean c : covered[best]) {
      angles += c ? 1 : 0;
    }
    double radius = 4 * Math.exp(0.04 * (best + 0.5));
    return new Candidate(
        x, y / stretch, radius, 1 - 1 / stretch, support[best], angles / (double) ANGLE_BINS);
  }
}
