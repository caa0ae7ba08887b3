package org.limbspan.limb;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds the biggest bright disc of a photograph, to about a thumbnail's pixel. */
final class MoonFinder {

  private static final double[] FLATTENINGS = {0, 0.07, 0.14};
  private static final double LEAST_COVERAGE = 0.16;
  private static final int TRIED = 6;

  private MoonFinder() {}

  /**
   * The rough outline in the photograph's pixels.
   *
   * @param spreadPx scatter of the edges about it, full pixels
   * @param coverage share of the outline with an edge, 0 to 1
   */
  record Found(Outline outline, double spreadPx, double coverage) {}

  static Optional<Found> find(LinearImage image) {
    Thumbnail thumbnail = new Thumbnail(image);
    if (thumbnail.width() < 16 || thumbnail.height() < 16) {
      return Optional.empty();
    }
    List<EdgePixel> edges = EdgeFinder.edges(thumbnail);
    List<CentreVote.Candidate> all = new ArrayList<>();
    for (double flattening : FLATTENINGS) {
      all.addAll(new CentreVote(edges, thumbnail, flattening).candidates());
    }
    all.removeIf(c -> c.coverage() < LEAST_COVERAGE);
    all.sort(Comparator.comparingDouble(CentreVote.Candidate::support).reversed());
    Found best = null;
    double bestScore = 0;
    for (CentreVote.Candidate candidate : all.subList(0, Math.min(TRIED, all.size()))) {
      RoughFit fit = new RoughFit(edges, candidate);
      double score = fit.score();
      if (score > bestScore) {
        bestScore = score;
        best = toFull(fit, thumbnail);
      }
    }
    return Optional.ofNullable(best);
  }

  private static Found toFull(RoughFit fit, Thumbnail thumbnail) {
    Outline small = fit.outline();
    int factor = thumbnail.factor();
    Outline full =
        new Outline(
            thumbnail.full(small.centreX()),
            thumbnail.full(small.centreY()),
            small.horizontalRadius() * factor,
            small.verticalRadius() * factor,
            0,
            0);
    return new Found(full, fit.spread() * factor, fit.coverage());
  }
}
