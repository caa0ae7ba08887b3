package org.limbspan.sky;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.orekit.bodies.CelestialBody;
import org.orekit.bodies.JPLEphemeridesLoader;
import org.orekit.data.ClasspathCrawler;
import org.orekit.data.DataProvidersManager;
import org.orekit.frames.Frame;
import org.orekit.time.AbsoluteDate;

/** The Moon of the same ephemeris file as Orekit's own loader reads it. */
public final class OrekitMoon {

  private final Times times = new Times();
  private final CelestialBody earth = body(JPLEphemeridesLoader.EphemerisType.EARTH, "Earth");
  private final CelestialBody moon = body(JPLEphemeridesLoader.EphemerisType.MOON, "Moon");

  public AbsoluteDate date(Instant at) {
    return times.date(at);
  }

  /** From the Earth's centre, in metres. */
  public Vector3D fromEarthM(AbsoluteDate date) {
    return moon.getPosition(date, earth.getInertiallyOrientedFrame());
  }

  private CelestialBody body(JPLEphemeridesLoader.EphemerisType type, String name) {
    DataProvidersManager manager = new DataProvidersManager();
    manager.addProvider(new ClasspathCrawler("ephemeris/lnxp1980p2060.405"));
    return new JPLEphemeridesLoader(
            JPLEphemeridesLoader.DEFAULT_DE_SUPPORTED_NAMES,
            type,
            manager,
            times.scales(),
            Frame.getRoot())
        .loadCelestialBody(name);
  }
}
