package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;

@LimbspanIT
@TestPropertySource(properties = "limbspan.owner-password=" + OwnerPasswordIT.PASSWORD)
class OwnerPasswordIT {

  static final String PASSWORD = "perigee-2031-apogee";

  @Autowired private RestTestClient client;

  @Test
  void asksForAPassword() {
    client
        .get()
        .uri("/actuator/info")
        .exchange()
        .expectStatus()
        .isUnauthorized()
        .expectHeader()
        .valueEquals(HttpHeaders.WWW_AUTHENTICATE, "Basic realm=\"Limbspan\"")
        .expectHeader()
        .contentType("application/problem+json")
        .expectBody()
        .jsonPath("$.title")
        .isEqualTo("Login needed");
  }

  @Test
  void letsTheOwnerInAgainAndAgain() {
    for (int i = 0; i < 3; i++) {
      assertThat(statusFor("owner", PASSWORD)).isEqualTo(200);
    }
  }

  @Test
  void keepsEverybodyElseOut() {
    assertThat(statusFor("owner", PASSWORD)).isEqualTo(200);
    assertThat(statusFor("owner", PASSWORD + "x")).isEqualTo(401);
    assertThat(statusFor("owner", "")).isEqualTo(401);
    assertThat(statusFor("admin", PASSWORD)).isEqualTo(401);
  }

  @Test
  void tellsItsHealthToEverybody() {
    client
        .get()
        .uri("/actuator/health")
        .exchange()
        .expectStatus()
        .isOk()
        .expectBody()
        .jsonPath("$.components")
        .doesNotExist();
    client
        .get()
        .uri("/actuator/health")
        .headers(headers -> headers.setBasicAuth("owner", PASSWORD))
        .exchange()
        .expectBody()
        .jsonPath("$.components.homeDisk.status")
        .isNotEmpty();
  }

  private int statusFor(String user, String password) {
    return client
        .get()
        .uri("/actuator/info")
        .headers(headers -> headers.setBasicAuth(user, password))
        .exchange()
        .returnResult(String.class)
        .getStatus()
        .value();
  }
}
