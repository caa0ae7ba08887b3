package org.limbspan.sky;

/**
 * A place on the WGS 84 ellipsoid.
 *
 * @param latitudeDeg geodetic latitude, -90 to 90, north positive
 * @param longitudeDeg longitude, -180 to 180, east positive
 * @param elevationM height above the ellipsoid in metres, -500 to 9000
 */
public record Site(double latitudeDeg, double longitudeDeg, double elevationM) {

  public Site {
    require("latitudeDeg", latitudeDeg, -90, 90);
    require("longitudeDeg", longitudeDeg, -180, 180);
    require("elevationM", elevationM, -500, 9000);
  }

  private static void require(String name, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new IllegalArgumentException(
          name + " " + value + ": expected " + least + " to " + most);
    }
  }
}
