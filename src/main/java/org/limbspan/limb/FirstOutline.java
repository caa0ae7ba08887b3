package org.limbspan.limb;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** From the rough outline to one good to a fraction of the edge's width, and that width. */
final class FirstOutline {

  private static final int ROUNDS = 4;
  private static final double LEAST_SHARE = 0.12;

  /** An edge this much wider than the sharpest quarter is no limb. */
  private static final double SOFT = 2.2;

  private final LinearImage image;
  private Outline outline;
  private double sigma;
  private double window;
  private List<FirstLook.Edge> edges = List.of();
  private Annulus annulus;

  private FirstOutline(LinearImage image, Outline rough) {
    this.image = image;
    outline = rough;
    window = Math.max(14, 0.035 * rough.meanRadius());
    annulus = new Annulus(image, outline, window);
  }

  static Optional<FirstOutline> of(LinearImage image, Outline rough) {
    FirstOutline first = new FirstOutline(image, rough);
    return first.settle() ? Optional.of(first) : Optional.empty();
  }

  Outline outline() {
    return outline;
  }

  /** Standard deviation of the edge's width, pixels. */
  double sigma() {
    return sigma;
  }

  /** Sectors with an edge of any width. */
  List<FirstLook.Edge> edges() {
    return edges;
  }

  /** The sectors that the last edges refer to. */
  Annulus annulus() {
    return annulus;
  }

  private boolean settle() {
    for (int round = 0; round < ROUNDS; round++) {
      if (round > 0) {
        annulus = new Annulus(image, outline, window);
      }
      edges = new FirstLook(annulus).edges();
      List<SectorEdge> kept = LimbSelection.agreeing(sharp(), outline);
      if (kept.size() < LEAST_SHARE * annulus.sectors()) {
        return false;
      }
      sigma = Math.max(0.5, medianSigma(kept));
      Outline before = outline;
      outline = OutlineFit.ellipse(points(kept), outline);
      window = Math.max(10, 7 * sigma);
      if (round > 0 && distance(before, outline) < 0.3) {
        break;
      }
    }
    return true;
  }

  static double distance(Outline a, Outline b) {
    double most = 0;
    for (int k = 0; k < 4; k++) {
      most = Math.max(most, Math.abs(a.toArray()[k] - b.toArray()[k]));
    }
    return most;
  }

  private List<SectorEdge> sharp() {
    double[] widths = edges.stream().mapToDouble(FirstLook.Edge::sigma).sorted().toArray();
    List<SectorEdge> sharp = new ArrayList<>();
    if (widths.length == 0) {
      return sharp;
    }
    double most = SOFT * Math.max(0.7, widths[widths.length / 4]);
    for (FirstLook.Edge e : edges) {
      if (e.sigma() < most) {
        sharp.add(
            new SectorEdge(
                annulus.angle(e.sector()),
                e.shift(),
                0.3,
                e.contrast(),
                e.contrast() / e.signalToNoise(),
                0,
                0,
                0,
                0,
                1));
      }
    }
    return sharp;
  }

  private double medianSigma(List<SectorEdge> kept) {
    Set<Double> angles = new HashSet<>();
    kept.forEach(e -> angles.add(e.angle()));
    double[] widths =
        edges.stream()
            .filter(e -> angles.contains(annulus.angle(e.sector())))
            .mapToDouble(FirstLook.Edge::sigma)
            .toArray();
    Arrays.sort(widths);
    return widths[widths.length / 2];
  }

  private List<OutlineFit.Point> points(List<SectorEdge> kept) {
    List<OutlineFit.Point> points = new ArrayList<>();
    for (SectorEdge e : kept) {
      double[] p = outline.pointAt(e.angle(), 1 + e.shift() / outline.meanRadius());
      points.add(new OutlineFit.Point(p[0], p[1], 1));
    }
    return points;
  }
}
