package org.limbspan.sky;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Finds stretches of whole seconds in which the Moon fulfils a condition. A stretch, or a gap in
 * one, of less than the step it is sought with may go unseen.
 */
final class Stretches {

  private final Function<Instant, MoonSight> sights;

  Stretches(Function<Instant, MoonSight> sights) {
    this.sights = sights;
  }

  /** A stretch of time, {@code [from, to)}, in which the condition holds. */
  record Stretch(Instant from, Instant to) {

    long seconds() {
      return Duration.between(from, to).toSeconds();
    }
  }

  /** The longest stretch within {@code [start, end)}, the earliest of equals. */
  Optional<Stretch> longest(
      Instant start, Instant end, Duration step, Predicate<MoonSight> condition) {
    Predicate<Instant> fulfilled = at -> condition.test(sights.apply(at));
    Instant last = end.truncatedTo(ChronoUnit.SECONDS);
    Instant before = firstSecond(start);
    Optional<Stretch> longest = Optional.empty();
    Optional<Instant> begun = begins(before, last, fulfilled);
    while (before.isBefore(last)) {
      Instant at = before.plus(step).isBefore(last) ? before.plus(step) : last;
      boolean now = at.isBefore(last) && fulfilled.test(at);
      if (begun.isEmpty() && now) {
        begun = Optional.of(change(before, at, fulfilled));
      } else if (begun.isPresent() && !now) {
        Stretch stretch = new Stretch(begun.get(), change(before, at, fulfilled.negate()));
        if (longest.isEmpty() || stretch.seconds() > longest.get().seconds()) {
          longest = Optional.of(stretch);
        }
        begun = Optional.empty();
      }
      before = at;
    }
    return longest;
  }

  /** The second of a stretch at which a measure that falls and then rises is least. */
  MoonSight nearest(Stretch stretch, ToDoubleFunction<MoonSight> measure) {
    long least = 0;
    long greatest = stretch.seconds() - 1;
    while (least < greatest) {
      long middle = (least + greatest) / 2;
      double here = measure.applyAsDouble(at(stretch, middle));
      double next = measure.applyAsDouble(at(stretch, middle + 1));
      if (next < here) {
        least = middle + 1;
      } else {
        greatest = middle;
      }
    }
    return at(stretch, least);
  }

  private MoonSight at(Stretch stretch, long second) {
    return sights.apply(stretch.from().plusSeconds(second));
  }

  private static Optional<Instant> begins(
      Instant start, Instant end, Predicate<Instant> fulfilled) {
    return start.isBefore(end) && fulfilled.test(start) ? Optional.of(start) : Optional.empty();
  }

  /** The first second after {@code before}, and no later than {@code at}, that is changed. */
  private static Instant change(Instant before, Instant at, Predicate<Instant> changed) {
    long least = 1;
    long greatest = Duration.between(before, at).toSeconds();
    while (least < greatest) {
      long middle = (least + greatest) / 2;
      if (changed.test(before.plusSeconds(middle))) {
        greatest = middle;
      } else {
        least = middle + 1;
      }
    }
    return before.plusSeconds(least);
  }

  private static Instant firstSecond(Instant at) {
    Instant second = at.truncatedTo(ChronoUnit.SECONDS);
    return second.isBefore(at) ? second.plusSeconds(1) : second;
  }
}
