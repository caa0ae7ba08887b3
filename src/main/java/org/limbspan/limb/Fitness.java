package org.limbspan.limb;

import java.util.List;
import java.util.Optional;
import org.limbspan.limb.Measurement.Refused;

/** Whether a photograph can give a diameter at all: the refusals, each with its limit. */
final class Fitness {

  private static final double LEAST_ON_OUTLINE = 0.12;
  private static final double DIMMEST = 0.2;
  private static final double THINNEST = 0.06;
  private static final double SOFTEST_SHARE = 0.015;
  private static final double SOFTEST_PX = 4;
  private static final double LONGEST_TRAIL_SHARE = 0.01;
  private static final double LONGEST_TRAIL_PX = 3;
  private static final double LEAST_ARC_DEG = 130;

  /**
   * A nearly full Moon shows more than half of its limb: where less is left, the terminator may
   * have been taken for it.
   */
  private static final double LEAST_ARC_NEARLY_FULL_DEG = 150;

  private static final double MOST_OUTSIDE = 0.015;
  private static final double MOST_UNCERTAIN = 0.006;
  private static final double MOST_CLIPPED = 0.38;
  private static final double BURNT_SHARE = 0.4;

  /** Of all sunlit ground: no mare is left that is darker than white. */
  private static final double MOST_WHITE = 0.98;

  private static final double MOST_DIM_WHITE = 0.85;

  /** A smaller part of the sunlit ground tells nothing. */
  private static final double LEAST_DIM = 0.03;

  private static final double MOST_UNEVEN = 0.006;

  /** Beyond this no seeing moves the limb: a part of it is terminator or foreground. */
  private static final double UNEVEN_SHARE = 0.0012;

  private static final double UNEVEN_PX = 1.2;

  private Fitness() {}

  /** Something round was there, yet its edge does not hold together. */
  static Refused withoutLimb(LinearImage image, MoonFinder.Found found, MeasureOptions options) {
    Outline outline = found.outline();
    if (outline.horizontalDiameterPx() < options.leastDiameterPx() && found.coverage() > 0.8) {
      return tooSmall(outline, options);
    }
    if (outsideShare(image, outline) > 0.1) {
      return cut(outsideShare(image, outline));
    }
    return new Refused(Refusal.NO_MOON, found.coverage(), "a bright round limb");
  }

  static Optional<Refused> beforeTracing(FirstOutline first, LitArea lit, MeasureOptions options) {
    Outline outline = first.outline();
    double diameter = outline.horizontalDiameterPx();
    if (diameter < options.leastDiameterPx()) {
      return Optional.of(tooSmall(outline, options));
    }
    double share = onOutline(first);
    if (share < LEAST_ON_OUTLINE) {
      return Optional.of(
          new Refused(
              Refusal.NO_MOON, share, "at least " + LEAST_ON_OUTLINE + " of a round outline"));
    }
    double contrast = limbContrast(first) / Math.max(1e-6, lit.brightness());
    if (contrast < DIMMEST) {
      return Optional.of(
          new Refused(
              Refusal.NO_MOON, contrast, "a limb at least " + DIMMEST + " as bright as the disc"));
    }
    double outside = litOutside(first.annulus(), lit);
    if (outside > MOST_OUTSIDE) {
      return Optional.of(cut(outside));
    }
    double trail = new Trail(first).lengthPx();
    double longest = LONGEST_TRAIL_PX + LONGEST_TRAIL_SHARE * diameter;
    if (trail > longest) {
      return Optional.of(
          new Refused(Refusal.TRAILED, trail, "a trail of at most " + round(longest) + " px"));
    }
    double width = EdgeShape.FWHM_OVER_SIGMA * first.sigma();
    double softest = SOFTEST_PX + SOFTEST_SHARE * diameter;
    if (width > softest) {
      return Optional.of(
          new Refused(
              Refusal.OUT_OF_FOCUS, width, "an edge at most " + round(softest) + " px wide"));
    }
    if (lit.illuminatedFraction() < THINNEST) {
      return Optional.of(
          new Refused(
              Refusal.CRESCENT_TOO_THIN,
              lit.illuminatedFraction(),
              "an illuminated fraction of at least " + THINNEST));
    }
    return burnt(lit.burnt());
  }

  /** Beyond twice white the foot of the edge is fitted as well by a narrower one, farther out. */
  private static Optional<Refused> burnt(LitArea.Burnt white) {
    if (white.ofAll() > MOST_WHITE) {
      return Optional.of(
          new Refused(
              Refusal.OVEREXPOSED,
              white.ofAll(),
              "less than " + MOST_WHITE + " of the sunlit disc white"));
    }
    if (white.dim() > LEAST_DIM && white.ofDim() > MOST_DIM_WHITE) {
      return Optional.of(
          new Refused(
              Refusal.OVEREXPOSED,
              white.ofDim(),
              "less than "
                  + MOST_DIM_WHITE
                  + " of the ground white that has a third to half of the limb's light"));
    }
    return Optional.empty();
  }

  /** Edges were there and did not agree on an outline: burnt out, or mostly hidden. */
  static Refused untraced(LimbTrace trace) {
    double[] clipped =
        trace.seen().stream().mapToDouble(SectorEdge::clippedShare).sorted().toArray();
    // the dark half of a half Moon has nothing to clip
    double share = clipped.length == 0 ? 0 : clipped[clipped.length * 3 / 4];
    return share > BURNT_SHARE
        ? new Refused(
            Refusal.OVEREXPOSED, share, "less than " + BURNT_SHARE + " of the limb's ground white")
        : new Refused(
            Refusal.LIMB_HIDDEN,
            trace.used().size(),
            "some sectors of sunlit limb that agree with one outline");
  }

  static Optional<Refused> afterTracing(
      LinearImage image, Measurement.Measured measured, LimbTrace trace) {
    double level = clipLevel(trace.used());
    if (level < MOST_CLIPPED) {
      return Optional.of(
          new Refused(
              Refusal.OVEREXPOSED,
              1 / level,
              "a limb at most " + round(1 / MOST_CLIPPED) + " times as bright as white"));
    }
    if (measured.ripplePx() > MOST_UNEVEN * measured.horizontal().valuePx() + 1.5) {
      return Optional.of(
          new Refused(Refusal.NO_MOON, measured.ripplePx(), "a limb even to some pixels"));
    }
    double mostUneven = UNEVEN_SHARE * measured.horizontal().valuePx() + UNEVEN_PX;
    if (measured.ripplePx() > mostUneven) {
      return Optional.of(
          new Refused(
              Refusal.LIMB_HIDDEN,
              measured.ripplePx(),
              "a limb within " + round(mostUneven) + " px of one outline"));
    }
    double worst =
        Math.min(
            measured.horizontal().relativeUncertainty(), measured.vertical().relativeUncertainty());
    double leastArc = trace.nearlyFull() ? LEAST_ARC_NEARLY_FULL_DEG : LEAST_ARC_DEG;
    if (measured.limbArcDeg() < leastArc) {
      return Optional.of(
          new Refused(
              Refusal.LIMB_HIDDEN,
              measured.limbArcDeg(),
              "at least " + leastArc + " degrees of sunlit limb"));
    }
    if (worst > MOST_UNCERTAIN) {
      Refusal reason =
          measured.illuminatedFraction() < 0.2 ? Refusal.CRESCENT_TOO_THIN : Refusal.LIMB_HIDDEN;
      return Optional.of(
          new Refused(
              reason,
              100 * worst,
              "an uncertainty of at most " + round(100 * MOST_UNCERTAIN) + " % on one axis"));
    }
    return Optional.empty();
  }

  private static Refused tooSmall(Outline outline, MeasureOptions options) {
    return new Refused(
        Refusal.TOO_SMALL,
        outline.horizontalDiameterPx(),
        "a disc at least " + options.leastDiameterPx() + " px wide");
  }

  private static Refused cut(double share) {
    return new Refused(Refusal.CUT_BY_FRAME, share, "the whole sunlit limb inside the picture");
  }

  private static double outsideShare(LinearImage image, Outline outline) {
    int outside = 0;
    for (int i = 0; i < 360; i++) {
      double[] p = outline.pointAt(Math.toRadians(i));
      outside += image.holds(p[0], p[1]) ? 0 : 1;
    }
    return outside / 360.0;
  }

  /** Share of the directions whose edge lies on the outline. */
  private static double onOutline(FirstOutline first) {
    double allowed = Math.max(2, 1.5 * first.sigma());
    return first.edges().stream().filter(e -> Math.abs(e.shift()) < allowed).count()
        / (double) first.annulus().sectors();
  }

  /** Upper quartile of the step of light at the limb. */
  private static double limbContrast(FirstOutline first) {
    double[] contrasts =
        first.edges().stream().mapToDouble(FirstLook.Edge::contrast).sorted().toArray();
    return contrasts[contrasts.length * 3 / 4];
  }

  /** Share of the sunlit limb that the frame cuts off. */
  private static double litOutside(Annulus annulus, LitArea lit) {
    int outside = 0;
    int sunlit = 0;
    boolean full = lit.illuminatedFraction() > 0.9;
    for (int s = 0; s < annulus.sectors(); s++) {
      if (full || Math.cos(annulus.angle(s) - lit.directionRad()) > 0.05) {
        sunlit++;
        outside += annulus.outside(s) ? 1 : 0;
      }
    }
    return sunlit == 0 ? 0 : outside / (double) sunlit;
  }

  /** Median over the limb of white over the limb's own brightness, 1 where nothing is clipped. */
  private static double clipLevel(List<SectorEdge> used) {
    double[] levels = used.stream().mapToDouble(SectorEdge::clipLevel).sorted().toArray();
    return levels[levels.length / 2];
  }

  private static double round(double value) {
    return value < 10 ? Math.round(value * 100) / 100.0 : Math.round(value * 10) / 10.0;
  }
}
