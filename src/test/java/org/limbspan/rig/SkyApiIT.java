package org.limbspan.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** The computed sky over HTTP. */
@LimbspanIT
class SkyApiIT {

  @Autowired private RestTestClient http;

  @Test
  void answersTheSameForARigAndForItsPlace() {
    RigClient rig = RigClient.described(http, "sky-rig");
    String at = "&at=2026-02-01T22:00:00Z";
    JsonNode ofRig = rig.getAt("/api/sky?rig=sky-rig" + at).body();
    JsonNode ofPlace =
        rig.getAt("/api/sky?latitudeDeg=48.2&longitudeDeg=16.4&elevationM=170" + at).body();
    assertThat(ofRig).isEqualTo(ofPlace);
    assertThat(ofRig.path("illuminatedFraction").asDouble())
        .as("full Moon of 1 February 2026, 22:09 UTC; almanacs, from memory")
        .isGreaterThan(0.999);
  }

  @Test
  void findsTheClosePerigeeOfNovember2016() {
    // 2016 November 14, 11:23 UTC, 356509 km: the closest between 1948 and 2034, widely published.
    JsonNode apsides =
        new RigClient(http, "none")
            .getAt("/api/apsides?from=2016-11-10T00:00:00Z&to=2016-11-20T00:00:00Z")
            .body();
    assertThat(apsides.size()).isEqualTo(1);
    assertThat(apsides.get(0).path("kind").asString()).isEqualTo("perigee");
    assertThat(apsides.get(0).path("distanceKm").asDouble()).isCloseTo(356509, within(1.0));
    Instant at = Instant.parse(apsides.get(0).path("at").asString());
    assertThat(Duration.between(Instant.parse("2016-11-14T11:23:00Z"), at).abs())
        .isLessThan(Duration.ofMinutes(2));
  }

  @Test
  void listsThePassesOverARig() {
    RigClient rig = RigClient.described(http, "sky-passes");
    JsonNode passes = rig.get("/passes?from=2026-02-01T00:00:00Z&to=2026-03-01T00:00:00Z").body();
    assertThat(passes.size()).isBetween(26, 28);
    for (JsonNode pass : passes) {
      Instant rise = Instant.parse(pass.path("riseAt").asString());
      Instant culmination = Instant.parse(pass.path("culminationAt").asString());
      Instant set = Instant.parse(pass.path("setAt").asString());
      assertThat(rise).isBefore(culmination);
      assertThat(culmination).isBefore(set);
      double ratio = pass.path("predictedRatio").asDouble();
      assertThat(ratio)
          .isCloseTo(
              pass.path("diameterAtCulminationArcmin").asDouble()
                  / pass.path("diameterAtRiseArcmin").asDouble(),
              within(1e-12));
      assertThat(ratio).isBetween(1.003, 1.02);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "/api/sky?at=2026-02-01T22:00:00Z,latitudeDeg,400",
    "/api/sky?latitudeDeg=91&longitudeDeg=16&elevationM=0,latitudeDeg,400",
    "/api/sky?latitudeDeg=NaN&longitudeDeg=16&elevationM=0,latitudeDeg,400",
    "/api/sky?latitudeDeg=48&longitudeDeg=181&elevationM=0,longitudeDeg,400",
    "/api/sky?latitudeDeg=48&longitudeDeg=16&elevationM=1e5,elevationM,400",
    "/api/sky?latitudeDeg=48&longitudeDeg=16&elevationM=0&at=2026-02-01T22:00:00,at,400",
    "/api/sky?latitudeDeg=48&longitudeDeg=16&elevationM=0&at=1969-07-20T20:17:00Z,at,400",
    "/api/sky?rig=no-such-rig,slug,404",
    "/api/apsides?to=2026-02-01T22:00:00Z,from,400",
    "/api/apsides?from=2026-02-01T22:00:00Z,to,400",
    "/api/apsides?from=2026-02-01T22:00:00Z&to=2026-01-01T22:00:00Z,to,400",
    "/api/apsides?from=1950-02-01T22:00:00Z&to=2026-01-01T22:00:00Z,from,400",
    "/api/rigs/no-such-rig/passes?from=2026-02-01T22:00:00Z,slug,404",
  })
  void refusesQuestionsThatMakeNoSense(String uri, String field, int status) {
    Answer answer = new RigClient(http, "none").getAt(uri);
    assertThat(answer.status()).as(answer.toString()).isEqualTo(status);
    assertThat(answer.violation(field).path("expected").asString()).isNotEmpty();
  }

  @Test
  void refusesPassesOverMoreThanTenYears() {
    RigClient rig = RigClient.described(http, "sky-long");
    Answer answer = rig.get("/passes?from=2000-01-01T00:00:00Z&to=2011-01-01T00:00:00Z");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.violation("to").path("expected").asString()).contains("3660 days");
  }
}
