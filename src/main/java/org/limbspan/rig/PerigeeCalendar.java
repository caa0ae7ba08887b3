package org.limbspan.rig;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Sky;

/** The perigees of each year, sought once: series ask for thousands of neighbouring instants. */
final class PerigeeCalendar {

  /** More than half the longest time between two perigees, so that the nearest is among them. */
  private static final Duration REACH = Duration.ofDays(16);

  private static final double DAY_MS = Duration.ofDays(1).toMillis();

  private final Sky sky;
  private final ConcurrentMap<Integer, NavigableSet<Instant>> perigees = new ConcurrentHashMap<>();

  PerigeeCalendar(Sky sky) {
    this.sky = sky;
  }

  /** Days from the nearest perigee, negative before it; {@code at} within the ephemeris. */
  double daysFromPerigee(Instant at) {
    int year = at.atOffset(ZoneOffset.UTC).getYear();
    NavigableSet<Instant> near = perigees.computeIfAbsent(year, this::around);
    Instant before = near.floor(at);
    Instant after = near.higher(at);
    if (before == null || after == null) {
      return sky.daysFromPerigee(at);
    }
    double since = days(before, at);
    double until = days(at, after);
    return since <= until ? since : -until;
  }

  private NavigableSet<Instant> around(int year) {
    Instant from = latest(start(year).minus(REACH), sky.ephemerisFrom());
    Instant to = earliest(start(year + 1).plus(REACH), sky.ephemerisTo());
    NavigableSet<Instant> found = new TreeSet<>();
    for (Apsis apsis : sky.apsides(from, to)) {
      if (apsis.kind() == Apsis.Kind.PERIGEE) {
        found.add(apsis.at());
      }
    }
    return found;
  }

  private static double days(Instant from, Instant to) {
    return Duration.between(from, to).toMillis() / DAY_MS;
  }

  private static Instant start(int year) {
    return Instant.parse("%04d-01-01T00:00:00Z".formatted(year));
  }

  private static Instant latest(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  private static Instant earliest(Instant one, Instant other) {
    return one.isBefore(other) ? one : other;
  }
}
