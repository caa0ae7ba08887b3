package org.limbspan.sky;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.orekit.bodies.GeodeticPoint;
import org.orekit.bodies.OneAxisEllipsoid;
import org.orekit.frames.Frame;
import org.orekit.utils.Constants;

/**
 * The horizon of a site on the WGS 84 ellipsoid: its position and its directions east, north and up
 * in the axes of the Earth, km.
 */
record Horizon(Vector3D positionKm, Vector3D east, Vector3D north, Vector3D up) {

  static Horizon of(Site site) {
    OneAxisEllipsoid ellipsoid =
        new OneAxisEllipsoid(
            Constants.WGS84_EARTH_EQUATORIAL_RADIUS,
            Constants.WGS84_EARTH_FLATTENING,
            Frame.getRoot());
    GeodeticPoint point =
        new GeodeticPoint(
            Math.toRadians(site.latitudeDeg()),
            Math.toRadians(site.longitudeDeg()),
            site.elevationM());
    Vector3D positionKm = ellipsoid.transform(point).scalarMultiply(1e-3);
    return new Horizon(positionKm, point.getEast(), point.getNorth(), point.getZenith());
  }

  /** The way from the site to a body, given from the Earth's centre in the axes of the Earth. */
  Vector3D toBody(Vector3D fromEarthCentreKm) {
    return fromEarthCentreKm.subtract(positionKm);
  }

  /** Altitude without refraction of a direction from the site. */
  double altitudeDeg(Vector3D fromSite) {
    double across = Math.hypot(fromSite.dotProduct(east), fromSite.dotProduct(north));
    return Math.toDegrees(Math.atan2(fromSite.dotProduct(up), across));
  }

  /**
   * Direction of the Sun as it stands over a body's disc, degrees counter-clockwise from the right
   * along the horizon, -180 to 180.
   */
  double brightLimbDeg(Vector3D toBody, Vector3D fromBodyToSun) {
    Vector3D right = Vector3D.crossProduct(toBody, up).normalize();
    Vector3D upwards = Vector3D.crossProduct(right, toBody).normalize();
    return Math.toDegrees(
        Math.atan2(fromBodyToSun.dotProduct(upwards), fromBodyToSun.dotProduct(right)));
  }

  /** Azimuth from north through east, 0 to 360 (360 excluded). */
  double azimuthDeg(Vector3D fromSite) {
    double azimuth =
        Math.toDegrees(Math.atan2(fromSite.dotProduct(east), fromSite.dotProduct(north)));
    double turned = azimuth < 0 ? azimuth + 360 : azimuth;
    return turned < 360 ? turned : 0;
  }
}
