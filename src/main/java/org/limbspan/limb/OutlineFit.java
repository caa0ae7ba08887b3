package org.limbspan.limb;

import java.util.List;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/** Least squares fit of an upright ellipse to points, by Levenberg and Marquardt's method. */
final class OutlineFit {

  /** Prior knowledge that keeps a fit to a short arc from running away: flattening 0 to 0.2. */
  private static final double FLATTENING_SPREAD = 0.1;

  private static final int FREE = 4;

  private OutlineFit() {}

  /**
   * A place on the limb.
   *
   * @param weight inverse of its standard uncertainty, up to a common factor
   */
  record Point(double x, double y, double weight) {}

  /** The best ellipse, or the start when the points do not determine one. */
  static Outline ellipse(List<Point> points, Outline start) {
    LeastSquaresBuilder problem =
        new LeastSquaresBuilder()
            .model(p -> evaluate(points, start, p))
            .target(new double[points.size() + 1])
            .start(
                new double[] {
                  start.centreX(), start.centreY(), start.horizontalRadius(), start.verticalRadius()
                })
            .maxEvaluations(60)
            .maxIterations(30)
            .checker((i, before, after) -> settled(before.getPoint(), after.getPoint()));
    try {
      Optimum optimum = new LevenbergMarquardtOptimizer().optimize(problem.build());
      double[] p = optimum.getPoint().toArray();
      return possible(p, start) ? outline(p, start) : start;
    } catch (MathIllegalStateException e) {
      return start;
    }
  }

  private static boolean settled(RealVector before, RealVector after) {
    return before.getLInfDistance(after) < 1e-3;
  }

  private static boolean possible(double[] p, Outline start) {
    double ratio = p[2] / start.horizontalRadius();
    return ratio > 0.6 && ratio < 1.6 && p[3] / p[2] > 0.7 && p[3] / p[2] < 1.15;
  }

  private static Outline outline(double[] p, Outline like) {
    return new Outline(
        p[0], p[1], Math.max(1, p[2]), Math.max(1, p[3]), like.asymmetry(), like.rollRad());
  }

  private static Pair<RealVector, RealMatrix> evaluate(
      List<Point> points, Outline like, RealVector p) {
    Outline outline = outline(p.toArray(), like);
    double[] value = new double[points.size() + 1];
    double[][] slope = new double[points.size() + 1][FREE];
    double total = 0;
    for (int i = 0; i < points.size(); i++) {
      Point point = points.get(i);
      Outline.Place place = outline.place(point.x(), point.y());
      double[] motion = outline.outwardMotion(place.angle());
      value[i] = point.weight() * place.depth();
      total += point.weight() * point.weight();
      for (int k = 0; k < FREE; k++) {
        slope[i][k] = point.weight() * motion[k];
      }
    }
    addFlattening(outline, Math.sqrt(Math.max(1, 0.02 * total)), value, slope);
    return new Pair<>(new ArrayRealVector(value, false), MatrixUtils.createRealMatrix(slope));
  }

  private static void addFlattening(
      Outline outline, double weight, double[] value, double[][] slope) {
    int last = value.length - 1;
    double a = outline.horizontalRadius();
    double scale = weight / FLATTENING_SPREAD;
    value[last] = scale * (1 - outline.verticalRadius() / a - 0.02);
    slope[last][2] = scale * outline.verticalRadius() / (a * a);
    slope[last][3] = -scale / a;
  }
}
