package org.limbspan.sky;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * Finds where the Moon first and last shows over a site's own horizon, to the second. It looks
 * every {@link #STEP}, a turn of one degree, so that a gap in the line narrower than that may go
 * unseen.
 */
public final class LineCrossings {

  static final Duration STEP = Duration.ofMinutes(4);

  /** A pass over a pole lasts for days; what is nearer to culmination than this is of one day. */
  private static final Duration HALF_A_TURN = Duration.ofHours(13);

  private final Sky sky;
  private final Site site;
  private final HorizonLine line;

  private LineCrossings(Sky sky, Site site, HorizonLine line) {
    this.sky = sky;
    this.site = site;
    this.line = line;
  }

  public static LineCrossings of(Sky sky, Site site, HorizonLine line) {
    return new LineCrossings(sky, site, line);
  }

  /**
   * The pass over the line; empty if the Moon does not come over it.
   *
   * @throws IllegalArgumentException if the pass reaches beyond the ephemeris
   */
  public Optional<PassOverLine> over(Pass pass) {
    Instant start = second(pass.riseAt().orElse(pass.culminationAt().minus(HALF_A_TURN)));
    Instant end = second(pass.setAt().orElse(pass.culminationAt().plus(HALF_A_TURN)));
    long seconds = Duration.between(start, end).toSeconds();
    Optional<Instant> first = firstShown(start, seconds, 1);
    if (first.isEmpty()) {
      return Optional.empty();
    }
    Instant last = firstShown(end, seconds, -1).orElseThrow();
    return Optional.of(
        new PassOverLine(edge(first.get(), pass.rise(), start), edge(last, pass.set(), end)));
  }

  /** The Moon at its own edge of the pass where the line does not shorten it. */
  private Optional<MoonSight> edge(Instant shown, Optional<MoonSight> own, Instant limit) {
    return shown.equals(limit) ? own : Optional.of(sight(shown));
  }

  /**
   * The first second at which the Moon shows, going from {@code start} forward or, with -1, back.
   */
  private Optional<Instant> firstShown(Instant start, long seconds, int direction) {
    if (shows(start)) {
      return Optional.of(start);
    }
    long step = STEP.toSeconds();
    for (long before = 0; before < seconds; before += step) {
      long at = Math.min(before + step, seconds);
      if (shows(start.plusSeconds(direction * at))) {
        return Optional.of(start.plusSeconds(direction * between(start, before, at, direction)));
      }
    }
    return Optional.empty();
  }

  private long between(Instant start, long hidden, long shown, int direction) {
    long least = hidden + 1;
    long greatest = shown;
    while (least < greatest) {
      long middle = (least + greatest) / 2;
      if (shows(start.plusSeconds(direction * middle))) {
        greatest = middle;
      } else {
        least = middle + 1;
      }
    }
    return least;
  }

  private boolean shows(Instant at) {
    return line.of(sight(at)) != HorizonLine.View.HIDDEN;
  }

  private MoonSight sight(Instant at) {
    return sky.moonAt(at, site);
  }

  private static Instant second(Instant at) {
    return at.truncatedTo(ChronoUnit.SECONDS);
  }
}
