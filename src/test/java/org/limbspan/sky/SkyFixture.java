package org.limbspan.sky;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.time.Instant;
import java.util.Objects;

/** The sky of the ephemeris that the service carries, one for all tests. */
public final class SkyFixture {

  private static final Ephemeris EPHEMERIS = Ephemeris.of(ByteBuffer.wrap(file()));
  private static final Sky SKY = Sky.of(EPHEMERIS);

  private SkyFixture() {}

  public static Sky sky() {
    return SKY;
  }

  /** The first sight from 2026-03-01 on of a Moon at that apparent altitude, to 0.01 degrees. */
  public static MoonSight firstAt(double apparentDeg, Site site) {
    MoonSight sight = SKY.moonAt(Instant.parse("2026-03-01T12:00:00Z"), site);
    while (Math.abs(sight.apparentAltitudeDeg() - apparentDeg) > 0.01) {
      sight = SKY.moonAt(sight.at().plusSeconds(2), site);
    }
    return sight;
  }

  static Ephemeris ephemeris() {
    return EPHEMERIS;
  }

  /** The bytes of the ephemeris file, a fresh copy. */
  static byte[] file() {
    try (InputStream in =
        Objects.requireNonNull(
            SkyFixture.class.getResourceAsStream("/ephemeris/lnxp1980p2060.405"))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
