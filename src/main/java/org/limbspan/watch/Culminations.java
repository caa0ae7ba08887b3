package org.limbspan.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Pass;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * The culminations over one site, found in blocks of fixed days and remembered, so that they come
 * out the same whenever they are asked for. Some 70 kB for ten years.
 */
final class Culminations {

  private static final long BLOCK_S = Duration.ofDays(128).toSeconds();

  private final Sky sky;
  private final Map<Long, List<Instant>> blocks = new HashMap<>();
  private @Nullable Site site;

  Culminations(Sky sky) {
    this.sky = sky;
  }

  /** Those in {@code [from, to]}, and some around it. */
  NavigableSet<Instant> around(Instant from, Instant to, Site where) {
    if (!where.equals(site)) {
      blocks.clear();
      site = where;
    }
    NavigableSet<Instant> found = new TreeSet<>();
    for (long block = block(from); block <= block(to); block++) {
      found.addAll(blocks.computeIfAbsent(block, number -> inBlock(number, where)));
    }
    return found;
  }

  private static long block(Instant instant) {
    return Math.floorDiv(instant.getEpochSecond(), BLOCK_S);
  }

  private List<Instant> inBlock(long block, Site where) {
    Instant from = Instant.ofEpochSecond(block * BLOCK_S);
    return sky.passes(from, from.plusSeconds(BLOCK_S), where).stream()
        .map(Pass::culminationAt)
        .toList();
  }
}
