package org.limbspan.bench.service;

import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

/** An invented rig with ten years of readings. */
final class TenYears {

  static final String SLUG = "ten-years";
  static final String RIG =
      """
      {"slug": "ten-years", "name": "Invented roof", "latitudeDeg": 40.1, "longitudeDeg": -3.2,
       "elevationM": 600, "timeZone": "Europe/Madrid"}""";

  private static final Site SITE = new Site(40.1, -3.2, 600);
  private static final Instant FIRST = Instant.parse("2015-01-03T00:00:00Z");
  private static final String HEADER = "taken_at,axis,diameter_arcmin,uncertainty_arcmin\n";

  private TenYears() {}

  /** As many as were asked for, every two hours that the Moon is up, with a tenth of noise. */
  static String csv(int count) {
    return csv(SITE, 15, count);
  }

  /** The same of another rig. */
  static String csv(Site site, long seed, int count) {
    Sky sky = SkyFixture.sky();
    SplittableRandom random = new SplittableRandom(seed);
    StringBuilder csv = new StringBuilder(HEADER);
    Instant at = FIRST.plusSeconds(seed % 3600);
    for (int made = 0; made < count; at = at.plus(Duration.ofHours(2))) {
      MoonSight sight = sky.moonAt(at, site);
      if (sight.altitudeDeg() > 10 && random.nextDouble() < 0.86) {
        double size = sight.horizontalDiameterArcmin() * Math.exp(0.0009 * random.nextGaussian());
        csv.append(at).append(",horizontal,").append(size).append(",0.031\n");
        made++;
      }
    }
    return csv.toString();
  }
}
