package org.limbspan.limb;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * One side of a sheet as a straight line: the edge is placed in stretches along it, each fitted
 * like the Moon's limb but for even ground, and a line is laid through the places.
 *
 * @param x of the line's middle, pixels
 * @param y the same, downwards
 * @param alongX unit vector along the side
 * @param alongY the same
 * @param outX unit vector away from the sheet
 * @param outY the same
 * @param halfLength of the part that is looked at, pixels
 * @param uncertainty of the line's place at its middle, pixels
 * @param sigma of the edge's width, pixels
 * @param bend root mean square distance of the stretches from the line, pixels
 */
record SheetSide(
    double x,
    double y,
    double alongX,
    double alongY,
    double outX,
    double outY,
    double halfLength,
    double uncertainty,
    double sigma,
    double bend) {

  private static final int STRETCHES = 40;
  private static final double WIDENING_PX = 0.1;

  /** The side moved to where the picture has it, or empty when too few stretches show an edge. */
  Optional<SheetSide> fitted(LinearImage image, double window) {
    EdgePixels pixels = pixels(image, window);
    int[] first = pixels.sort(STRETCHES);
    EdgeShape shape = new EdgeShape(sigma, 0.04, 2 * window + 10 * sigma);
    EdgeTemplate template = EdgeTemplate.even(shape, 2 * window);
    EdgeTemplate wider = EdgeTemplate.even(shape.withSigma(sigma + WIDENING_PX), 2 * window);
    List<SectorEdge> edges = new ArrayList<>();
    for (int s = 0; s < STRETCHES; s++) {
      SectorProfile profile =
          new SectorProfile(pixels, first[s], first[s + 1], window, (int) Math.ceil(4 * window));
      new SectorFit(profile, place(s), window, template, wider, WIDENING_PX, GroundTexture.NONE)
          .from(0, 9)
          .filter(e -> e.signalToNoise() > 4)
          .ifPresent(edges::add);
    }
    return edges.size() < STRETCHES / 2 ? Optional.empty() : line(edges);
  }

  /** Place of a stretch along the side, pixels from its middle. */
  private double place(int stretch) {
    return halfLength * (2 * (stretch + 0.5) / STRETCHES - 1);
  }

  private EdgePixels pixels(LinearImage image, double window) {
    EdgePixels pixels = new EdgePixels((int) (4 * halfLength * window) + 100);
    double reachX = Math.abs(alongX) * halfLength + Math.abs(outX) * window + 1;
    double reachY = Math.abs(alongY) * halfLength + Math.abs(outY) * window + 1;
    int left = (int) Math.max(0, x - reachX);
    int right = (int) Math.min(image.width() - 1.0, x + reachX);
    int top = (int) Math.max(0, y - reachY);
    int bottom = (int) Math.min(image.height() - 1.0, y + reachY);
    for (int j = top; j <= bottom; j++) {
      for (int i = left; i <= right; i++) {
        double along = (i - x) * alongX + (j - y) * alongY;
        double out = (i - x) * outX + (j - y) * outY;
        if (Math.abs(along) < halfLength && Math.abs(out) <= window) {
          int stretch = (int) ((along / halfLength + 1) / 2 * STRETCHES);
          float light = image.clipped(i, j) ? Float.POSITIVE_INFINITY : image.light(i, j);
          pixels.add(Math.min(STRETCHES - 1, stretch), -out, light);
        }
      }
    }
    return pixels;
  }

  /** A line through the stretches' places, those far off losing their weight. */
  private Optional<SheetSide> line(List<SectorEdge> edges) {
    double[] weights = new double[edges.size()];
    Arrays.fill(weights, 1);
    double[] fit = {0, 0};
    double scatter = 0;
    double spread = 1;
    for (int round = 0; round < 8; round++) {
      double[][] rows = new double[edges.size()][];
      double[] right = new double[edges.size()];
      for (int i = 0; i < rows.length; i++) {
        double w = Math.sqrt(weights[i]);
        rows[i] = new double[] {w, w * edges.get(i).angle()};
        right[i] = w * edges.get(i).shift();
      }
      SingularValueDecomposition svd =
          new SingularValueDecomposition(MatrixUtils.createRealMatrix(rows));
      RealVector solution = svd.getSolver().solve(MatrixUtils.createRealVector(right));
      RealMatrix covariance = svd.getCovariance(0);
      fit = solution.toArray();
      double[] sizes = new double[edges.size()];
      for (int i = 0; i < sizes.length; i++) {
        sizes[i] = Math.abs(edges.get(i).shift() - fit[0] - fit[1] * edges.get(i).angle());
      }
      double[] sorted = sizes.clone();
      Arrays.sort(sorted);
      scatter = Math.max(0.005, 1.4826 * sorted[sorted.length / 2]);
      spread = Math.sqrt(covariance.getEntry(0, 0));
      for (int i = 0; i < sizes.length; i++) {
        double unit = sizes[i] / (3 * scatter);
        weights[i] = 1 / Math.pow(1 + unit * unit, 2);
      }
    }
    double[] widths = edges.stream().mapToDouble(SectorEdge::widthShift).sorted().toArray();
    double width = Math.max(0.4, sigma + widths[widths.length / 2]);
    double tilt = Math.atan(fit[1]);
    double cos = Math.cos(tilt);
    double sin = Math.sin(tilt);
    return Optional.of(
        new SheetSide(
            x + fit[0] * outX,
            y + fit[0] * outY,
            alongX * cos + outX * sin,
            alongY * cos + outY * sin,
            outX * cos - alongX * sin,
            outY * cos - alongY * sin,
            halfLength,
            scatter * spread,
            width,
            scatter));
  }

  /** Where two sides meet. */
  SheetMeasurement.Corner meets(SheetSide other) {
    double cross = alongX * other.alongY - alongY * other.alongX;
    double t = ((other.x - x) * other.alongY - (other.y - y) * other.alongX) / cross;
    return new SheetMeasurement.Corner(x + t * alongX, y + t * alongY);
  }
}
