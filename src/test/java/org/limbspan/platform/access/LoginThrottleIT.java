package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;

/** A service of its own: the address of the tests has to wait afterwards. */
@LimbspanIT
@TestPropertySource(properties = "limbspan.owner-password=" + LoginThrottleIT.PASSWORD)
class LoginThrottleIT {

  static final String PASSWORD = "umbra-2033-penumbra";

  @Autowired private RestTestClient client;

  @Test
  void letsNobodyGuessOnAndOn() {
    for (int i = 0; i < Attempts.MOST; i++) {
      assertThat(i % 2 == 0 ? withKey(i) : withPassword("guess-number-" + i)).isEqualTo(401);
    }
    assertThat(withKey(99)).isEqualTo(429);
    assertThat(withPassword(PASSWORD)).isEqualTo(429);
    client.get().uri("/actuator/health").exchange().expectStatus().isOk();
  }

  private int withKey(int number) {
    return status(headers -> headers.setBearerAuth("limbspan-rig-" + number));
  }

  private int withPassword(String password) {
    return status(headers -> headers.setBasicAuth("owner", password));
  }

  private int status(java.util.function.Consumer<HttpHeaders> login) {
    return client
        .get()
        .uri("/actuator/info")
        .headers(login)
        .exchange()
        .returnResult(String.class)
        .getStatus()
        .value();
  }
}
