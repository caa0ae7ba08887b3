package org.limbspan.share;

import java.util.List;

/**
 * A rig as it is shared: {@code rig.json}.
 *
 * @param positionDeg to which latitude and longitude are rounded; 0 for exact
 * @param scaleUncertaintyPercent of each setup's plate scale, by number; -1 where it has none
 */
record SharedRig(
    String slug,
    String name,
    double latitudeDeg,
    double longitudeDeg,
    double elevationM,
    double positionDeg,
    List<Double> scaleUncertaintyPercent) {

  SharedRig {
    scaleUncertaintyPercent = List.copyOf(scaleUncertaintyPercent);
  }
}
