package org.limbspan.sky;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Vectors from the angles that books print. */
final class Directions {

  private Directions() {}

  /** From longitude (or right ascension) and latitude (or declination) in degrees. */
  static Vector3D of(double longitudeDeg, double latitudeDeg, double distance) {
    return new Vector3D(
        distance, new Vector3D(Math.toRadians(longitudeDeg), Math.toRadians(latitudeDeg)));
  }

  /** Degrees, arcminutes and arcseconds; the sign of the degrees counts for all. */
  static double dms(int degrees, int minutes, double seconds) {
    double size = Math.abs(degrees) + minutes / 60.0 + seconds / 3600;
    return degrees < 0 ? -size : size;
  }
}
