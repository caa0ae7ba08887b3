package org.limbspan.platform;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
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
}
