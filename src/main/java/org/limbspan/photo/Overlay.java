package org.limbspan.photo;

import java.util.Locale;
import org.limbspan.limb.LimbArc;
import org.limbspan.limb.Outline;

/**
 * Draws what was measured over a photograph, as an SVG picture of the same size (W3C, SVG 1.1): the
 * outline thin, the limb that was used bold beside it, limb that was set aside dashed, both
 * diameters and the centre. Beside the limb, so that the limb itself can be seen.
 */
final class Overlay {

  private static final double BESIDE = 1.06;
  private static final double STEP_DEG = 1;

  private final Photograph photo;
  private final DiscFigures figures;
  private final Outline outline;
  private final StringBuilder svg = new StringBuilder();

  private Overlay(Photograph photo, DiscFigures figures) {
    this.photo = photo;
    this.figures = figures;
    outline = figures.outline();
  }

  static String svg(Photograph photo, DiscFigures figures) {
    return new Overlay(photo, figures).draw();
  }

  private String draw() {
    add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-0.5 -0.5 %d %d\" fill=\"none\""
            + " stroke-linecap=\"round\">\n",
        photo.widthPx(), photo.heightPx());
    add(
        "<title>Horizontal %.2f px, vertical %.2f px, %.0f degrees of limb used</title>\n",
        figures.horizontal().diameterPx(), figures.vertical().diameterPx(), figures.limbArcDeg());
    path("outline", "#7fd1ff", 1, "", new LimbArc(0, 360), 1);
    for (LimbArc arc : figures.usedArcs()) {
      path("used", "#7fd1ff", 3, "", arc, BESIDE);
    }
    for (LimbArc arc : figures.setAsideArcs()) {
      path("set-aside", "#ffb454", 3, "2 6", arc, BESIDE);
    }
    diameter("horizontal", 0);
    diameter("vertical", Math.PI / 2);
    svg.append("</svg>\n");
    return svg.toString();
  }

  private void path(
      String kind, String colour, int widthPx, String dashes, LimbArc arc, double factor) {
    svg.append("<path class=\"").append(kind).append("\" d=\"");
    int steps = (int) Math.max(1, Math.ceil(arc.lengthDeg() / STEP_DEG));
    for (int i = 0; i <= steps; i++) {
      double[] point = point(Math.toRadians(arc.fromDeg() + arc.lengthDeg() * i / steps), factor);
      add("%s%.2f %.2f", i == 0 ? "M" : "L", point[0], point[1]);
    }
    add("\" stroke=\"%s\" stroke-width=\"%d\"", colour, widthPx);
    svg.append(dashes.isEmpty() ? "" : " stroke-dasharray=\"" + dashes + "\"");
    svg.append(" vector-effect=\"non-scaling-stroke\"/>\n");
  }

  private void diameter(String kind, double angleRad) {
    double[] from = outline.pointAt(angleRad);
    double[] to = outline.pointAt(angleRad + Math.PI);
    add(
        "<path class=\"%s\" d=\"M%.2f %.2fL%.2f %.2f\" stroke=\"#ffffff\" stroke-opacity=\"0.6\""
            + " stroke-width=\"1\" vector-effect=\"non-scaling-stroke\"/>\n",
        kind, from[0], from[1], to[0], to[1]);
  }

  private double[] point(double angleRad, double factor) {
    double[] limb = outline.pointAt(angleRad);
    return new double[] {
      figures.centreX() + factor * (limb[0] - figures.centreX()),
      figures.centreY() + factor * (limb[1] - figures.centreY())
    };
  }

  private void add(String format, Object... values) {
    svg.append(String.format(Locale.ROOT, format, values));
  }
}
