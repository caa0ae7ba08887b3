package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.Measured;
import org.limbspan.share.Comparison;
import org.limbspan.share.Comparison.Compared;
import org.limbspan.share.Comparison.Figure;
import org.limbspan.share.Comparison.Parallax;
import org.limbspan.share.Guest;

/**
 * The page of the guests, in words ready to print.
 *
 * @param ratios and {@code swings}: the columns of the drawing, a mark to each rig
 * @param height of the drawing
 */
record ShareSheet(
    List<Line> rigs, List<Mark> ratios, List<Mark> swings, int height, List<Distance> distances) {

  private static final int ROW = 24;
  private static final double RATIO_LEFT = 60;
  private static final double SWING_LEFT = 270;
  private static final double WIDTH = 180;

  /**
   * @param id of the guest; empty for the rig itself
   */
  record Line(
      int number,
      String id,
      String name,
      String where,
      String licence,
      String readings,
      String pairs,
      String ratio,
      String growth,
      String swingShare,
      String swing) {}

  /** A figure with its bar of k = 2 in the drawing. */
  record Mark(int number, String y, String low, String at, String high) {}

  record Distance(String name, String pairs, String parallax, String distance, String words) {}

  static ShareSheet of(Comparison comparison, List<Guest> guests) {
    List<Compared> rigs = comparison.rigs();
    return new ShareSheet(
        IntStream.range(0, rigs.size()).mapToObj(i -> line(i + 1, rigs.get(i), guests)).toList(),
        marks(rigs, Compared::nightRatio, RATIO_LEFT),
        marks(rigs, Compared::monthlySwingPercent, SWING_LEFT),
        30 + ROW * rigs.size(),
        comparison.parallaxes().stream().map(ShareSheet::distance).toList());
  }

  private static Line line(int number, Compared rig, List<Guest> guests) {
    Long id = rig.guestId();
    String licence =
        guests.stream()
            .filter(guest -> id != null && guest.id() == id)
            .map(Guest::licence)
            .findFirst()
            .orElse("");
    return new Line(
        number,
        id == null ? "" : String.valueOf(id),
        rig.name(),
        Coordinate.LATITUDE.words(rig.latitudeDeg())
            + ", "
            + Coordinate.LONGITUDE.words(rig.longitudeDeg())
            + (rig.positionDeg() > 0 ? ", to " + rig.positionDeg() + "\u00b0" : ""),
        licence,
        Typeset.whole(rig.readingCount()),
        Typeset.whole(rig.pairCount()),
        pair(rig.nightRatio()),
        pair(rig.nightGrowth()),
        pair(rig.swing()),
        pair(rig.monthlySwingPercent()));
  }

  private static String pair(@Nullable Figure figure) {
    return figure == null
        ? "too few"
        : Typeset.pair(new Measured(figure.value(), figure.uncertainty()));
  }

  private static List<Mark> marks(
      List<Compared> rigs, Function<Compared, @Nullable Figure> of, double left) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (Compared rig : rigs) {
      Figure figure = of.apply(rig);
      if (figure != null) {
        least = Math.min(least, figure.value() - 2 * figure.uncertainty());
        most = Math.max(most, figure.value() + 2 * figure.uncertainty());
      }
    }
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < rigs.size(); i++) {
      Figure figure = of.apply(rigs.get(i));
      if (figure != null && most > least) {
        double scale = WIDTH / (most - least);
        marks.add(
            new Mark(
                i + 1,
                number(34 + ROW * i),
                number(left + scale * (figure.value() - 2 * figure.uncertainty() - least)),
                number(left + scale * (figure.value() - least)),
                number(left + scale * (figure.value() + 2 * figure.uncertainty() - least))));
      }
    }
    return marks;
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private static Distance distance(Parallax parallax) {
    Figure value = parallax.parallax();
    String within = " within " + parallax.withinMinutes() + " minutes";
    if (value == null) {
      return new Distance(
          parallax.name(), "0", "", "", "No readings of both" + within + ": three pairs at least.");
    }
    Double position = parallax.positionUncertainty();
    return new Distance(
        parallax.name(),
        Typeset.whole(parallax.pairCount()),
        pair(value),
        parallax.distanceEarthRadii() == null ? "not told" : pair(parallax.distanceEarthRadii()),
        "Pairs"
            + within
            + (position == null || position == 0
                ? "; both positions exact."
                : "; the rounded position adds "
                    + Typeset.places(1e6 * position, 1)
                    + " millionths to the parallax\u2019s uncertainty, included."));
  }
}
