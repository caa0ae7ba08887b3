package org.limbspan.dashboard;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.limbspan.cycle.LatitudeRatios;
import org.limbspan.cycle.NearMoon;

/**
 * One band of latitudes on the drawn map, 20 degrees high, with the ratios at its middle. Map units
 * are degrees; the north pole is at 0.
 *
 * @param shade opacity, more for a larger ratio of the near Moon
 */
record RatioBand(
    String name, int top, int middle, String shade, String near, String orbiting, String words) {

  private static final int HEIGHT_DEG = 20;
  private static final double LARGEST = 3.6;

  static List<RatioBand> all() {
    return IntStream.range(0, 180 / HEIGHT_DEG)
        .map(k -> k * HEIGHT_DEG)
        .mapToObj(RatioBand::from)
        .toList();
  }

  private static RatioBand from(int top) {
    int latitude = 90 - top - HEIGHT_DEG / 2;
    LatitudeRatios ratios = LatitudeRatios.at(latitude, NearMoon.HEIGHT_KM);
    double shade = Math.min(1, Math.max(0, (ratios.nearMoonRatio() - 1) / (LARGEST - 1)));
    String near = Typeset.places(ratios.nearMoonRatio(), 1);
    String orbiting = Typeset.places(ratios.orbitingMoonRatio(), 3);
    String name = Math.abs(latitude) + "\u00b0" + (latitude > 0 ? " N" : latitude < 0 ? " S" : "");
    return new RatioBand(
        name,
        top,
        top + HEIGHT_DEG / 2,
        String.format(Locale.ROOT, "%.2f", 0.12 + 0.68 * shade),
        near,
        orbiting,
        "about " + name + ": near Moon " + near + ", orbiting Moon " + orbiting);
  }
}
