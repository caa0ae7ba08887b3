package org.limbspan.watch;

import java.util.List;
import org.limbspan.cycle.LatitudeRatios;

/**
 * Size at culmination over size at rising by latitude, the Moon over the equator, as each
 * hypothesis has it.
 *
 * @param nearMoonHeightKm above the flat ground
 * @param orbitingMoonDistanceKm between the centres
 */
record RatioTable(
    double nearMoonHeightKm, double orbitingMoonDistanceKm, List<LatitudeRatios> ratios) {

  RatioTable {
    ratios = List.copyOf(ratios);
  }
}
