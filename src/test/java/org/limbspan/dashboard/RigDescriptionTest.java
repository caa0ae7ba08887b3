package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class RigDescriptionTest {

  private static final Instant NOW = Instant.parse("2026-05-02T12:00:00Z");

  @Test
  void takesWhatIsWhole() {
    RigDescription entry =
        entry("Hilltop, 600 mm", null, "52.1", "4\u00b0 06\u2032 W", "212", "Europe/London");
    assertThat(entry.complaints()).isEmpty();
    assertThat(entry.slug()).isEqualTo("hilltop-600-mm");
    assertThat(entry.longitudeDeg()).isEqualTo(-4.1);
    assertThat(entry.timeZone()).isEqualTo(ZoneId.of("Europe/London"));
  }

  @Test
  void makesAShortNameWithoutAccents() {
    assertThat(new RigForm("Ch\u00e2teau d'\u00c9t\u00e9!", "", "", "", "", "", "", "").shortName())
        .isEqualTo("chateau-d-ete");
    assertThat(new RigForm("x".repeat(39) + " y", "", "", "", "", "", "", "").shortName())
        .isEqualTo("x".repeat(39));
  }

  @Test
  void complainsOfEveryFieldInTheOrderOfTheForm() {
    RigDescription entry = entry(" ", "Not A Slug", "52 E", "181", "high", "Europe/Atlantis");
    assertThat(entry.complaints().keySet())
        .containsExactly("name", "slug", "latitude", "longitude", "elevation", "timeZone");
  }

  @Test
  void complainsOfAnEmptyForm() {
    assertThat(new RigDescription(RigForm.EMPTY, NOW).complaints())
        .containsOnlyKeys("name", "latitude", "longitude", "elevation", "timeZone");
  }

  @Test
  void doubtsAZoneFarFromTheLongitudeUntilConfirmed() {
    RigForm wrongSign = form("Hill", null, "40", "74", "10", "America/New_York", null);
    RigDescription doubted = new RigDescription(wrongSign, NOW);
    assertThat(doubted.isZoneDoubted()).isTrue();
    assertThat(doubted.complaints()).containsOnlyKeys("timeZone");

    RigForm confirmed = form("Hill", null, "40", "74", "10", "America/New_York", "yes");
    assertThat(new RigDescription(confirmed, NOW).complaints()).isEmpty();
  }

  @Test
  void believesTheGreatestDifferencesThatLawHasMade() {
    assertThat(entry("Kashgar", null, "39.47", "75.99", "1270", "Asia/Shanghai").complaints())
        .as("2.9 hours, west of China")
        .isEmpty();
    assertThat(entry("Kiritimati", null, "1.87", "-157.4", "3", "Pacific/Kiritimati").complaints())
        .as("24 hours round the date line count as none")
        .isEmpty();
  }

  private static RigDescription entry(
      String name,
      @Nullable String slug,
      String latitude,
      String longitude,
      String elevation,
      String zone) {
    return new RigDescription(form(name, slug, latitude, longitude, elevation, zone, null), NOW);
  }

  private static RigForm form(
      String name,
      @Nullable String slug,
      String latitude,
      String longitude,
      String elevation,
      String zone,
      @Nullable String confirmed) {
    return new RigForm(name, slug, latitude, longitude, elevation, zone, null, confirmed);
  }
}
