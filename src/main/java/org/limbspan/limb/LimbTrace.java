package org.limbspan.limb;

import java.util.ArrayList;
import java.util.List;

/**
 * Traces the limb to a small fraction of a pixel: sectors are fitted about the outline, the outline
 * is adjusted to them, the edge's width and the Sun's direction are renewed, until nothing moves.
 */
final class LimbTrace {

  private static final double WINDOW_IN_FWHM = 1.7;
  private static final double WINDOW_PX = 3;
  private static final double WIDENING_PX = 0.1;
  private static final double USUAL_WING = 0.06;
  private static final int MOST_ROUNDS = 7;
  private static final int WIDTH_ROUNDS = 2;
  private static final double SETTLED_PX = 0.04;

  /**
   * A width that changed by a smaller share is renewed no more; the next change is a third of it.
   */
  private static final double SETTLED_WIDTH = 0.04;

  /** Above this lit share the terminator may hide beside the limb. */
  private static final double NEARLY_FULL = 0.93;

  /** The same of the computed fraction, which shadows do not lessen. */
  private static final double EXPECTED_NEARLY_FULL = 0.955;

  /** Error of a sector's place that its pixels do not show, as a share of the edge's width. */
  private static final double SECTOR_ERROR = 0.007;

  /**
   * Sine of the Sun's least height over a limb that is used where its direction is the photograph's
   * own, known to 3 degrees.
   */
  private static final double LEAST_SUN = 0.06;

  /**
   * Sine of the Sun's least height over the ground an edge's width inside the limb: lower, slopes
   * throw shadows over it. The limb of a crescent darkens inwards.
   */
  private static final double LEAST_SUN_INSIDE = 0.04;

  /** Widest strip that a terminator hides beside a limb that is used, in widths of the edge. */
  private static final double MOST_HIDDEN = 0.8;

  /** Farther from the computed one the Sun's direction is not followed. */
  private static final double MOST_TURN_RAD = Math.toRadians(8);

  private final LinearImage image;
  private final FirstOutline first;
  private final FlatteningPrior prior;
  private final PhasePrior phase;
  private Outline outline;
  private Outline before;
  private double sigma;
  private Illumination light;
  private Terminator terminator = Terminator.FAR;
  private final boolean nearlyFull;

  /** Whether the Sun is sought on the photograph, and not only corrected. */
  private boolean seeking;

  private double turnRad;
  private List<SectorEdge> seen = List.of();
  private List<SectorEdge> used = List.of();
  private @org.jspecify.annotations.Nullable LimbAdjustment adjustment;

  LimbTrace(
      LinearImage image, FirstOutline first, LitArea lit, FlatteningPrior prior, PhasePrior phase) {
    this.image = image;
    this.first = first;
    this.prior = prior;
    this.phase = phase;
    outline = first.outline();
    before = outline;
    sigma = first.sigma();
    nearlyFull =
        phase.isKnown()
            ? phase.light().illuminatedFraction() > EXPECTED_NEARLY_FULL
            : lit.illuminatedFraction() > NEARLY_FULL;
    seeking = nearlyFull && !phase.isKnown();
    if (phase.isKnown()) {
      light = phase.light(turnRad);
    } else if (nearlyFull) {
      light = Illumination.FULL;
    } else {
      light = Illumination.of(lit.illuminatedFraction(), lit.directionRad());
    }
  }

  /** Whether enough of the limb was found to adjust an outline at all. */
  boolean run() {
    boolean computed = nearlyFull && phase.isKnown();
    if (settles() && (!computed || isConfirmed())) {
      return true;
    }
    if (!computed) {
      return false;
    }
    outline = first.outline();
    sigma = first.sigma();
    light = Illumination.FULL;
    terminator = Terminator.FAR;
    seeking = true;
    return settles();
  }

  /**
   * Whether the photograph has a nearly full Moon's Sun where it was computed; asked of the settled
   * outline, since a first one follows the terminator and makes any Sun look wrong.
   */
  private boolean isConfirmed() {
    double width = EdgeShape.FWHM_OVER_SIGMA * sigma;
    return !new LitShadow(image, outline, width).contradicts(terminator, used)
        && new PhaseSearch(new Annulus(image, outline, window()), shape(), phase).isExpected();
  }

  private double window() {
    return Math.max(8, WINDOW_PX + WINDOW_IN_FWHM * EdgeShape.FWHM_OVER_SIGMA * sigma);
  }

  private EdgeShape shape() {
    return new EdgeShape(sigma, USUAL_WING, 2 * window() + 10 * sigma);
  }

  private boolean settles() {
    double move = Double.MAX_VALUE;
    int searches = 0;
    double widening = 0;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      boolean withWidth =
          round < WIDTH_ROUNDS
              || (round < MOST_ROUNDS - 1 && Math.abs(widening) > SETTLED_WIDTH * sigma);
      boolean last = round == MOST_ROUNDS - 1 || (!withWidth && move < SETTLED_PX);
      EdgeShape shape = shape();
      Annulus annulus = new Annulus(image, outline, window());
      if (seeking && round > 0 && !last && (searches < mostSearches() || move > 0.5)) {
        PhaseSearch search = new PhaseSearch(annulus, shape, phase);
        light = search.illumination();
        terminator = search;
        searches++;
      }
      if (!seeking && phase.isKnown()) {
        light = phase.light(turnRad);
        terminator = new ComputedTerminator(phase, turnRad, outline.meanRadius());
      }
      seen = edges(annulus, shape, withWidth);
      used = LimbSelection.agreeing(LimbSelection.plausible(sunlit(seen)), outline);
      if (used.size() < 20) {
        return false;
      }
      if (withWidth) {
        widening = renewWidth();
      }
      before = outline;
      adjustment =
          new LimbAdjustment(
              used,
              outline,
              terminator,
              prior,
              SECTOR_ERROR * EdgeShape.FWHM_OVER_SIGMA * sigma,
              last);
      if (!adjustment.isConverging()) {
        return false;
      }
      outline = adjustment.outline();
      turnRad += adjustment.turnRad();
      turnRad = Math.max(-MOST_TURN_RAD, Math.min(MOST_TURN_RAD, turnRad));
      move = FirstOutline.distance(before, outline);
      if (last) {
        break;
      }
    }
    return true;
  }

  /** A computed Sun is confirmed once the outline is good; an unknown one is sought longer. */
  private int mostSearches() {
    return terminator.isExpected() ? 2 : 3;
  }

  private List<SectorEdge> edges(Annulus annulus, EdgeShape shape, boolean withWidth) {
    double reach = 2 * annulus.window();
    double radius = outline.meanRadius();
    GroundTexture ground = GroundTexture.within(annulus.window(), radius);
    TemplateShelf templates = new TemplateShelf(shape, light, radius, reach, ground.patches());
    TemplateShelf wider =
        withWidth
            ? new TemplateShelf(
                shape.withSigma(sigma + WIDENING_PX), light, radius, reach, ground.patches())
            : templates;
    List<SectorEdge> found = new ArrayList<>();
    for (int s = 0; s < annulus.sectors(); s++) {
      if (annulus.outside(s)) {
        continue;
      }
      double angle = annulus.angle(s);
      new SectorFit(
              annulus.profile(s),
              angle,
              annulus.window(),
              templates.at(angle),
              wider.at(angle),
              WIDENING_PX,
              ground)
          .from(0, 7)
          .ifPresent(found::add);
    }
    return found;
  }

  private List<SectorEdge> sunlit(List<SectorEdge> edges) {
    List<SectorEdge> kept = new ArrayList<>();
    double mostHidden =
        EdgeShape.FWHM_OVER_SIGMA * sigma * (terminator.excess() > 0 ? 1 : MOST_HIDDEN);
    for (SectorEdge e : edges) {
      boolean clear = terminator.hidden(e.angle()) < mostHidden;
      if (clear && (nearlyFull || sunIsUp(e.angle()))) {
        kept.add(e);
      }
    }
    return kept;
  }

  private boolean sunIsUp(double angleRad) {
    double sun = light.sunOverLimb(angleRad);
    double width = EdgeShape.FWHM_OVER_SIGMA * sigma / outline.meanRadius();
    boolean inside = sun + light.towardsViewer() * EdgeTemplate.cosine(width) > LEAST_SUN_INSIDE;
    return inside && (phase.isKnown() || sun > LEAST_SUN);
  }

  /** Takes the width from the sectors; answers by how much it grew. */
  private double renewWidth() {
    double[] shifts = used.stream().mapToDouble(SectorEdge::widthShift).sorted().toArray();
    double renewed = Math.max(0.4, sigma + shifts[shifts.length / 2]);
    double growth = renewed - sigma;
    sigma = renewed;
    return growth;
  }

  Outline outline() {
    return outline;
  }

  /** What the sectors' shifts refer to. */
  Outline before() {
    return before;
  }

  double sigma() {
    return sigma;
  }

  Illumination light() {
    return light;
  }

  boolean nearlyFull() {
    return nearlyFull;
  }

  /** Whether the Sun stands where it was expected. */
  boolean isExpectedPhase() {
    return terminator.isExpected();
  }

  /** Every sector with an edge. */
  List<SectorEdge> seen() {
    return seen;
  }

  /** Those that the outline was adjusted to. */
  List<SectorEdge> used() {
    return used;
  }

  LimbCovariance.Solution solution() {
    if (adjustment == null) {
      throw new IllegalStateException("the limb has not been traced");
    }
    return adjustment.solution();
  }
}
