package org.limbspan.cycle;

import java.util.List;

/**
 * The periods that readings carry by themselves.
 *
 * @param lines in the order in which they were found, the strongest first; the first is the
 *     anomalistic month, its amplitude the eccentricity in the sense of {@link SelfReliantCycle}
 * @param distance mean distance of the Moon, from the growth of the disc with altitude
 * @param noise scatter about the sum of the lines
 * @param readingCount readings that were looked at
 */
public record Spectrum(
    List<SpectralLine> lines, MoonDistance distance, Noise noise, int readingCount) {

  public Spectrum {
    lines = List.copyOf(lines);
  }
}
