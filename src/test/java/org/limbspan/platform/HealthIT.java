package org.limbspan.platform;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

@LimbspanIT
class HealthIT {

  @Autowired private RestTestClient client;

  @Test
  void answersHealthWhenTheDatabaseIsUp() {
    client
        .get()
        .uri("/actuator/health")
        .exchange()
        .expectStatus()
        .isOk()
        .expectBody()
        .jsonPath("$.status")
        .isEqualTo("UP");
  }

  @Test
  void tellsTheOwnerWhatItRestsOn() {
    RigClient.described(client, "health-rig");
    client
        .get()
        .uri("/actuator/health")
        .exchange()
        .expectBody()
        .jsonPath("$.components.db.status")
        .isEqualTo("UP")
        .jsonPath("$.components.ephemeris.details.daysLeft")
        .isNumber()
        .jsonPath("$.components.ephemeris.details.reachesTo")
        .isEqualTo("2060-01-01T00:00:00Z")
        .jsonPath("$.components.homeDisk.details.freeBytes")
        .isNumber()
        .jsonPath("$.components.latestReading.details.health-rig")
        .isEqualTo("none yet");
  }
}
