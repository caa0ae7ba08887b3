package org.limbspan.limb;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/** Turns a traced limb into diameters with their uncertainties. */
final class Assessment {

  /**
   * Common error of the whole edge that no residual shows, as a share of its width: ground beside
   * the limb, a contrast curve. Found with the project's rendered photographs (LimbBench).
   */
  private static final double EDGE_ERROR = 0.011;

  /** The same where the Sun's direction, and so the limb's brightness, is not known beforehand. */
  private static final double UNEXPECTED_EDGE_ERROR = 0.02;

  /** On a nearly full Moon whose phase is not known beforehand. */
  private static final double UNEXPECTED_NEARLY_FULL_ERROR = 0.05;

  /**
   * Common error of the whole edge from patches of ground beside the limb, square pixels: this over
   * the disc's radius, since on a small disc patches are no larger than the edge is wide. Found
   * with rendered discs of 60 to 200 px of radius, plain and sharpened.
   */
  private static final double GROUND_ERROR_PX2 = 5;

  /**
   * Such an error, as a share of the edge's width, where its upper half is clipped, for each unit
   * of over-exposure.
   */
  private static final double CLIPPED_ERROR = 0.05;

  private final LimbTrace trace;
  private final LitArea lit;

  Assessment(LimbTrace trace, LitArea lit) {
    this.trace = trace;
    this.lit = lit;
  }

  Measurement.Measured measured() {
    Outline outline = trace.outline();
    LimbCovariance.Solution solution = trace.solution();
    double sectorDeg = 360.0 / Annulus.sectorCount(trace.before());
    RealMatrix total = solution.total();
    return new Measurement.Measured(
        outline,
        diameter(outline.horizontalDiameterPx(), LimbAdjustment.HORIZONTAL),
        diameter(outline.verticalDiameterPx(), LimbAdjustment.VERTICAL),
        Math.sqrt(
            Math.max(
                total.getEntry(LimbAdjustment.CENTRE_X, LimbAdjustment.CENTRE_X),
                total.getEntry(LimbAdjustment.CENTRE_Y, LimbAdjustment.CENTRE_Y))),
        flatteningUncertainty(),
        trace.used().size() * sectorDeg,
        arcs(trace.used(), sectorDeg),
        arcs(setAside(), sectorDeg),
        EdgeShape.FWHM_OVER_SIGMA * trace.sigma(),
        solution.ripplePx(),
        lit.clippedShare(),
        clippedLimbShare(),
        trace.nearlyFull() ? trace.light().illuminatedFraction() : lit.illuminatedFraction());
  }

  private Diameter diameter(double value, int index) {
    LimbCovariance.Solution solution = trace.solution();
    double noise = part(solution.noise(), index);
    double ripple = part(solution.ripple(), index);
    double relief = part(solution.relief(), index);
    double all = part(solution.total(), index);
    double rest = all * all - noise * noise - ripple * ripple - relief * relief;
    return new Diameter(value, noise, ripple, relief, modelError(), Math.sqrt(Math.max(0, rest)));
  }

  private static double part(RealMatrix covariance, int index) {
    return 2 * Math.sqrt(Math.max(0, covariance.getEntry(index, index)));
  }

  private double modelError() {
    double fwhm = EdgeShape.FWHM_OVER_SIGMA * trace.sigma();
    double edge = 2 * fwhm * edgeError();
    double clipped = 0;
    for (SectorEdge e : trace.used()) {
      clipped += e.clippedShare() * (1 / Math.max(0.1, e.clipLevel()) - 0.6);
    }
    double blooming = 2 * CLIPPED_ERROR * fwhm * Math.max(0, clipped) / trace.used().size();
    double ground = 2 * GROUND_ERROR_PX2 / trace.outline().meanRadius();
    return Math.hypot(Math.hypot(edge, ground), blooming);
  }

  private double edgeError() {
    if (trace.isExpectedPhase()) {
      return EDGE_ERROR;
    }
    return trace.nearlyFull() ? UNEXPECTED_NEARLY_FULL_ERROR : UNEXPECTED_EDGE_ERROR;
  }

  private double flatteningUncertainty() {
    Outline outline = trace.outline();
    double a = outline.horizontalRadius();
    RealVector gradient = new ArrayRealVector(trace.solution().values().getDimension());
    gradient.setEntry(LimbAdjustment.HORIZONTAL, outline.verticalRadius() / (a * a));
    gradient.setEntry(LimbAdjustment.VERTICAL, -1 / a);
    return Math.sqrt(Math.max(0, gradient.dotProduct(trace.solution().total().operate(gradient))));
  }

  private double clippedLimbShare() {
    return trace.used().stream().filter(e -> e.clippedShare() > 0.2).count()
        / (double) trace.used().size();
  }

  private List<SectorEdge> setAside() {
    List<SectorEdge> aside = new ArrayList<>(trace.seen());
    aside.removeAll(trace.used());
    aside.removeIf(e -> trace.light().sunOverLimb(e.angle()) < -0.02);
    return aside;
  }

  /** Sectors joined into arcs; single ones that stand alone are arcs of one sector. */
  private static List<LimbArc> arcs(List<SectorEdge> edges, double sectorDeg) {
    List<LimbArc> arcs = new ArrayList<>();
    double from = Double.NaN;
    double to = Double.NaN;
    for (SectorEdge e : edges) {
      double start = Math.toDegrees(e.angle()) - sectorDeg / 2;
      if (!Double.isNaN(to) && start - to < sectorDeg / 2) {
        to = start + sectorDeg;
      } else {
        if (!Double.isNaN(to)) {
          arcs.add(new LimbArc(from, to));
        }
        from = Math.max(0, start);
        to = start + sectorDeg;
      }
    }
    if (!Double.isNaN(to)) {
      arcs.add(new LimbArc(from, to));
    }
    return joined(arcs, sectorDeg);
  }

  /** The first and the last arc joined where they meet at the horizon's right. */
  private static List<LimbArc> joined(List<LimbArc> arcs, double sectorDeg) {
    if (arcs.size() < 2) {
      return arcs;
    }
    LimbArc first = arcs.get(0);
    LimbArc last = arcs.get(arcs.size() - 1);
    if (first.fromDeg() > sectorDeg / 2 || last.toDeg() < 360 - sectorDeg / 2) {
      return arcs;
    }
    List<LimbArc> joined = new ArrayList<>(arcs.subList(1, arcs.size() - 1));
    joined.add(new LimbArc(last.fromDeg(), 360 + first.toDeg()));
    return joined;
  }
}
