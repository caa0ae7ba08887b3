package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.limbspan.dashboard.TonightArc.Band;
import org.limbspan.dashboard.TonightArc.Rule;
import org.limbspan.dashboard.TonightArc.Stroke;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindow;
import org.limbspan.sky.SkyLight;

/** Draws the way of the Moon: apparent altitude against local time. */
final class TonightArcs {

  private static final double LEAST_DEG = -8;
  private static final int ROOM_FOR_A_WORD = 62;
  private static final int ROOM_FOR_A_DIRECTION = 70;

  private final TonightFacts facts;
  private final List<MoonSight> track;
  private final Instant from;
  private final double seconds;
  private final double greatestDeg;

  private TonightArcs(TonightFacts facts, ShootingPlan plan) {
    this.facts = facts;
    this.track = facts.track();
    this.from = track.get(0).at();
    this.seconds = Duration.between(from, track.get(track.size() - 1).at()).toSeconds();
    double highestDeg = plan.pass().culminationApparentAltitudeDeg();
    this.greatestDeg = Math.min(96, 10 * Math.ceil((highestDeg + 8) / 10));
  }

  static TonightArc of(TonightFacts facts) {
    return facts
        .plan()
        .map(plan -> new TonightArcs(facts, plan).draw(plan))
        .orElse(TonightArc.NONE);
  }

  private TonightArc draw(ShootingPlan plan) {
    return new TonightArc(
        path(track),
        ownLine(),
        ground(),
        bands(),
        altitudes(),
        hours(),
        directions(),
        marks(),
        plan.windows().stream().map(this::stroke).toList(),
        summary(plan));
  }

  private double x(Instant at) {
    double share = Duration.between(from, at).toMillis() / 1000.0 / seconds;
    return rounded(TonightArc.LEFT + share * (TonightArc.RIGHT - TonightArc.LEFT));
  }

  private double y(double altitudeDeg) {
    double share = (altitudeDeg - LEAST_DEG) / (greatestDeg - LEAST_DEG);
    return rounded(TonightArc.FOOT - share * (TonightArc.FOOT - TonightArc.TOP));
  }

  private static double rounded(double value) {
    return Math.round(value * 10) / 10.0;
  }

  private String path(List<MoonSight> sights) {
    return sights.stream()
        .filter(sight -> sight.apparentAltitudeDeg() > LEAST_DEG)
        .map(
            sight ->
                String.format(
                    Locale.ROOT, "%.1f %.1f", x(sight.at()), y(sight.apparentAltitudeDeg())))
        .collect(Collectors.joining("L", "M", ""));
  }

  /** The rig's own horizon in the Moon's direction at each time, cut off at the upper edge. */
  private String ownLine() {
    return facts
        .own()
        .map(
            own ->
                new OwnOutline(own.line())
                    .along(track).stream()
                        .map(
                            corner ->
                                String.format(
                                    Locale.ROOT,
                                    "%.1f %.1f",
                                    x(corner.at()),
                                    y(Math.min(greatestDeg, corner.altitudeDeg()))))
                        .collect(Collectors.joining("L", "M", "")))
        .orElse("");
  }

  private String ground() {
    return facts.own().isPresent()
        ? "The full line at 0\u00b0 is the sea horizon; the outline over it is the horizon entered for"
            + " this rig, as high as it stands in the Moon\u2019s direction at that time."
        : "The full line is the sea horizon at 0\u00b0; no line of hills and roofs is entered for this"
            + " rig.";
  }

  private List<Band> bands() {
    List<Band> bands = new ArrayList<>();
    Instant begun = from;
    for (int i = 1; i < track.size(); i++) {
      SkyLight light = SkyLight.of(track.get(i - 1).sunAltitudeDeg());
      boolean last = i == track.size() - 1;
      if (last || SkyLight.of(track.get(i).sunAltitudeDeg()) != light) {
        Instant end = last ? track.get(i).at() : crossing(track.get(i - 1), track.get(i));
        double width = rounded(x(end) - x(begun));
        String word = TonightWords.light(light).replace(" twilight", "");
        bands.add(
            new Band(
                light.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                x(begun),
                width,
                rounded(x(begun) + width / 2),
                width < ROOM_FOR_A_WORD && !word.equals("day") ? "" : word));
        begun = end;
      }
    }
    return bands;
  }

  /** Where the Sun passes the limit between the lights of two sights, by a straight line. */
  private static Instant crossing(MoonSight before, MoonSight after) {
    double first = before.sunAltitudeDeg();
    double second = after.sunAltitudeDeg();
    double limit = SkyLight.of(Math.max(first, second)).leastSunAltitudeDeg();
    long millis = Duration.between(before.at(), after.at()).toMillis();
    return before.at().plusMillis(Math.round(millis * (limit - first) / (second - first)));
  }

  private List<Rule> altitudes() {
    List<Rule> rules = new ArrayList<>();
    int step = greatestDeg > 50 ? 20 : 10;
    for (int deg = step; deg < greatestDeg; deg += step) {
      rules.add(new Rule(TonightArc.LEFT, y(deg), deg + "\u00b0"));
    }
    return rules;
  }

  /** The horizon. */
  private Rule horizon() {
    return new Rule(TonightArc.LEFT, y(0), "0\u00b0");
  }

  private List<Rule> hours() {
    List<Rule> rules = new ArrayList<>();
    Instant end = track.get(track.size() - 1).at();
    ZonedDateTime hour = from.atZone(facts.rig().timeZone()).truncatedTo(ChronoUnit.HOURS);
    for (; !hour.toInstant().isAfter(end); hour = hour.plusHours(1)) {
      if (hour.getHour() % 3 == 0 && !hour.toInstant().isBefore(from)) {
        rules.add(
            new Rule(
                x(hour.toInstant()),
                TonightArc.FOOT,
                String.format(Locale.ROOT, "%02d", hour.getHour())));
      }
    }
    return rules;
  }

  /**
   * The horizon, and the directions the Moon passes over it: the four winds before those between.
   */
  private List<Rule> directions() {
    List<Rule> rules = new ArrayList<>();
    for (int winds = 0; winds < 2; winds++) {
      for (int i = 1; i < track.size(); i++) {
        int octant = turnsTo(track.get(i - 1), track.get(i));
        double x = x(track.get(i).at());
        boolean wanted = octant >= 0 && octant % 2 == winds;
        if (wanted && track.get(i).apparentAltitudeDeg() > 0 && hasRoom(x, rules)) {
          String word = TonightWords.direction(45 * octant);
          rules.add(new Rule(x, y(track.get(i).apparentAltitudeDeg()), word));
        }
      }
    }
    rules.add(0, horizon());
    return rules;
  }

  private static boolean hasRoom(double x, List<Rule> rules) {
    return x - TonightArc.LEFT > ROOM_FOR_A_DIRECTION / 2.0
        && TonightArc.RIGHT - x > ROOM_FOR_A_DIRECTION / 2.0
        && rules.stream().allMatch(rule -> Math.abs(rule.x() - x) >= ROOM_FOR_A_DIRECTION);
  }

  /** The eighth of the horizon that is passed between two sights, -1 if none is. */
  private static int turnsTo(MoonSight before, MoonSight after) {
    int first = octant(before);
    int second = octant(after);
    if (first == second) {
      return -1;
    }
    return Math.abs(first - second) > 4 ? 0 : Math.max(first, second);
  }

  private static int octant(MoonSight sight) {
    return (int) (sight.azimuthDeg() / 45);
  }

  private List<Rule> marks() {
    Instant end = track.get(track.size() - 1).at();
    boolean inside = !facts.now().isBefore(from) && !facts.now().isAfter(end);
    return inside ? List.of(new Rule(x(facts.now()), TonightArc.TOP, "now")) : List.of();
  }

  private Stroke stroke(ShootingWindow window) {
    StringBuilder path = new StringBuilder("M" + point(window.from()));
    track.stream()
        .map(MoonSight::at)
        .filter(at -> at.isAfter(window.from()) && at.isBefore(window.to()))
        .forEach(at -> path.append('L').append(point(at)));
    path.append('L').append(point(window.to()));
    String word = window.place().isLow() ? "low" : "high";
    MoonSight best = window.best();
    return new Stroke(word, path.toString(), x(best.at()), y(best.apparentAltitudeDeg()), word);
  }

  /** The point of the way at an instant, on the straight line between two sights. */
  private String point(Instant at) {
    int next = 1;
    while (next < track.size() - 1 && track.get(next).at().isBefore(at)) {
      next++;
    }
    MoonSight before = track.get(next - 1);
    MoonSight after = track.get(next);
    double share =
        (double) Duration.between(before.at(), at).toMillis()
            / Duration.between(before.at(), after.at()).toMillis();
    double altitudeDeg =
        before.apparentAltitudeDeg()
            + share * (after.apparentAltitudeDeg() - before.apparentAltitudeDeg());
    return String.format(Locale.ROOT, "%.1f %.1f", x(at), y(altitudeDeg));
  }

  private String summary(ShootingPlan plan) {
    MoonSight top = plan.pass().culmination();
    return "The Moon culminates "
        + TonightWords.altitude(top)
        + " high in the "
        + TonightWords.direction(top.azimuthDeg())
        + "; the table below has its rise and set."
        + facts.own().map(TonightWords::ownHorizon).map(words -> " " + words).orElse("");
  }
}
