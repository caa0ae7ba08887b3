package org.limbspan.sky;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.limbspan.sky.EarthRotation.Attitude;
import org.orekit.utils.Constants;

/**
 * The Earth's attitude over a stretch of days, for searches that ask for it thousands of times:
 * computed once a day, interpolated linearly between. Within 0.01 arcseconds of {@link
 * EarthRotation}, and continuous, also over a leap second.
 */
final class AttitudeTable {

  private final double firstDay;
  private final Attitude[] attitudes;

  /** The table for {@code fromTdbDays} to {@code toTdbDays}. */
  AttitudeTable(EarthRotation rotation, Times times, double fromTdbDays, double toTdbDays) {
    firstDay = Math.floor(fromTdbDays);
    attitudes = new Attitude[(int) (Math.floor(toTdbDays) - firstDay) + 2];
    for (int day = 0; day < attitudes.length; day++) {
      attitudes[day] = rotation.at(times.date(firstDay + day));
    }
  }

  /** A direction given in the axes of J2000.0, in the axes of the Earth. */
  Vector3D toEarth(Vector3D direction, double tdbDays) {
    int day = (int) (tdbDays - firstDay);
    double part = tdbDays - firstDay - day;
    Attitude before = attitudes[day];
    Attitude after = attitudes[day + 1];
    Vector3D equatorial =
        new Vector3D(
            1 - part,
            before.trueEquator().applyTo(direction),
            part,
            after.trueEquator().applyTo(direction));
    return turned(equatorial, siderealTimeRad(before, after, part));
  }

  private static double siderealTimeRad(Attitude before, Attitude after, double part) {
    double onward =
        before.siderealTimeRad() + part * Constants.JULIAN_DAY * before.siderealRateRadPerS();
    double back =
        after.siderealTimeRad() - (1 - part) * Constants.JULIAN_DAY * after.siderealRateRadPerS();
    return onward + part * Math.IEEEremainder(back - onward, 2 * Math.PI);
  }

  private static Vector3D turned(Vector3D equatorial, double angleRad) {
    double sin = Math.sin(angleRad);
    double cos = Math.cos(angleRad);
    return new Vector3D(
        cos * equatorial.getX() + sin * equatorial.getY(),
        cos * equatorial.getY() - sin * equatorial.getX(),
        equatorial.getZ());
  }
}
