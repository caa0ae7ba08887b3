package org.limbspan.limb;

import java.util.ArrayList;
import java.util.List;

/**
 * An ellipse through the edges near a candidate. The terminator lies inside the outline, so an edge
 * inside counts for less than one outside; the allowed distance shrinks from round to round.
 */
final class RoughFit {

  private static final double[] SCALES = {0.02, 0.012, 0.008, 0.006};
  private static final double SEARCHED = 0.12;

  private final List<EdgePixel> edges;
  private Outline outline;

  RoughFit(List<EdgePixel> edges, CentreVote.Candidate candidate) {
    this.edges = edges;
    outline =
        new Outline(
            candidate.x(),
            candidate.y(),
            candidate.radius(),
            candidate.radius() * (1 - candidate.flattening()),
            0,
            0);
    List<EdgePixel> close = close(SEARCHED * candidate.radius());
    outline =
        new CircleConsensus(close, Math.max(0.7, 0.006 * candidate.radius()), candidate.radius())
            .orElse(outline);
    for (double scale : SCALES) {
      refine(scale);
    }
  }

  Outline outline() {
    return outline;
  }

  /** Length of the outline that has an edge, weighed by the edge's strength: a sharp limb wins. */
  double score() {
    double[] strongest = new double[72];
    for (EdgePixel e : close(Math.max(1, 0.008 * outline.meanRadius()))) {
      double angle = outline.place(e.x(), e.y()).angle();
      int bin = Math.floorMod((int) Math.floor(angle / (2 * Math.PI) * 72), 72);
      strongest[bin] = Math.max(strongest[bin], e.strength());
    }
    double sum = 0;
    for (double s : strongest) {
      sum += s;
    }
    return sum * outline.meanRadius();
  }

  double coverage() {
    boolean[] covered = new boolean[72];
    for (OutlineFit.Point p : near(Math.max(1.2, 0.012 * outline.meanRadius()))) {
      double angle = outline.place(p.x(), p.y()).angle();
      covered[Math.floorMod((int) Math.floor(angle / (2 * Math.PI) * 72), 72)] = true;
    }
    int count = 0;
    for (boolean c : covered) {
      count += c ? 1 : 0;
    }
    return count / 72.0;
  }

  /** Root mean square distance of the near edges, thumbnail pixels. */
  double spread() {
    double sum = 0;
    List<OutlineFit.Point> near = near(Math.max(1.5, 0.02 * outline.meanRadius()));
    for (OutlineFit.Point p : near) {
      double depth = outline.place(p.x(), p.y()).depth();
      sum += depth * depth;
    }
    return near.isEmpty() ? Double.MAX_VALUE : Math.sqrt(sum / near.size());
  }

  private void refine(double scale) {
    double allowed = Math.max(0.7, scale * outline.meanRadius());
    List<OutlineFit.Point> points = near(3 * allowed);
    if (points.size() < 12) {
      return;
    }
    List<OutlineFit.Point> weighed = new ArrayList<>(points.size());
    for (OutlineFit.Point p : points) {
      double depth = outline.place(p.x(), p.y()).depth();
      double unit = depth / (depth > 0 ? 0.7 * allowed : allowed);
      double weight = p.weight() / Math.pow(1 + unit * unit, 2);
      weighed.add(new OutlineFit.Point(p.x(), p.y(), Math.sqrt(weight)));
    }
    outline = OutlineFit.ellipse(weighed, outline);
  }

  /**
   * Edges within a distance of the outline whose bright side is inwards. The limb is sharp and the
   * terminator soft, so that an edge much weaker than the strong ones there weighs little.
   */
  private List<OutlineFit.Point> near(double distance) {
    List<EdgePixel> close = close(distance);
    List<OutlineFit.Point> found = new ArrayList<>(close.size());
    if (close.isEmpty()) {
      return found;
    }
    double[] strengths = close.stream().mapToDouble(EdgePixel::strength).sorted().toArray();
    double strong = strengths[(int) (0.8 * (strengths.length - 1))];
    for (EdgePixel e : close) {
      double share = e.strength() / strong;
      if (share > 0.15) {
        found.add(new OutlineFit.Point(e.x(), e.y(), Math.min(1, 4 * share * share)));
      }
    }
    return found;
  }

  private List<EdgePixel> close(double distance) {
    List<EdgePixel> close = new ArrayList<>();
    double flat = outline.horizontalRadius() / outline.verticalRadius();
    double reach = outline.horizontalRadius() + distance;
    for (EdgePixel e : edges) {
      double dx = e.x() - outline.centreX();
      double dy = e.y() - outline.centreY();
      if (Math.abs(dx) > reach || Math.abs(dy) > reach) {
        continue;
      }
      double u = dx / outline.horizontalRadius();
      double v = dy / outline.verticalRadius();
      if (Math.abs(1 - Math.sqrt(u * u + v * v)) * outline.meanRadius() > 2 * distance) {
        continue;
      }
      double normalY = dy * flat * flat;
      double cos =
          -(dx * e.towardsX() + normalY * e.towardsY()) / Math.sqrt(dx * dx + normalY * normalY);
      if (cos > 0.85 && Math.abs(outline.place(e.x(), e.y()).depth()) < distance) {
        close.add(e);
      }
    }
    return close;
  }
}
