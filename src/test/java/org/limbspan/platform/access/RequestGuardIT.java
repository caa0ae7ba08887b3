package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RawHttp;
import org.springframework.boot.test.web.server.LocalServerPort;

/** The guard from outside. {@code POST /actuator/health} gets 405 from the service itself. */
@LimbspanIT
class RequestGuardIT {

  private static final String READ = "GET /actuator/health";
  private static final String CHANGE = "POST /actuator/health";
  private static final String REFUSED = "HTTP/1.1 403 ";

  @LocalServerPort private int port;

  @ParameterizedTest
  @ValueSource(strings = {"localhost", "127.0.0.1", "[::1]", "LocalHost"})
  void takesRequestsAddressedToThisComputer(String name) throws Exception {
    assertThat(send(READ, "Host: " + name + ":" + port)).startsWith("HTTP/1.1 200 ");
    assertThat(send(READ, "Host: " + name)).startsWith("HTTP/1.1 200 ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "rebound.example",
        "localhost.rebound.example",
        "127.0.0.1.rebound.example",
        "192.168.1.20",
        "0.0.0.0",
        "localhost."
      })
  void refusesRequestsAddressedToAForeignName(String name) throws Exception {
    String answer = send(READ, "Host: " + name + ":" + port);

    assertThat(answer)
        .startsWith(REFUSED)
        .contains("Content-Type: application/problem+json")
        .contains("\"field\":\"Host\"")
        .contains("\"value\":\"" + name + ":" + port + "\"")
        .contains("one of 127.0.0.1, [::1], localhost");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://foreign.example",
        "https://localhost.foreign.example",
        "http://localhost:1",
        "http://localhost",
        "file://",
        "nonsense"
      })
  void refusesAForeignOrigin(String origin) throws Exception {
    String host = "Host: localhost:" + port;

    assertThat(send(CHANGE, host, "Origin: " + origin))
        .startsWith(REFUSED)
        .contains("\"field\":\"Origin\"");
    assertThat(send(READ, host, "Origin: " + origin)).startsWith(REFUSED);
    assertThat(send("OPTIONS /api/rigs", host, "Origin: " + origin)).startsWith(REFUSED);
  }

  @Test
  void refusesChangesFromAnOpaqueOrigin() throws Exception {
    String host = "Host: localhost:" + port;

    assertThat(send(CHANGE, host, "Origin: null")).startsWith(REFUSED);
    assertThat(send(READ, host, "Origin: null")).startsWith("HTTP/1.1 200 ");
  }

  @Test
  void takesItsOwnOrigin() throws Exception {
    assertThat(send(CHANGE, "Host: localhost:" + port, "Origin: http://localhost:" + port))
        .startsWith("HTTP/1.1 405 ");
  }

  @Test
  void refusesChangesThatABrowserSendsForAnotherSite() throws Exception {
    String host = "Host: localhost:" + port;

    assertThat(send(CHANGE, host, "Sec-Fetch-Site: cross-site"))
        .startsWith(REFUSED)
        .contains("\"field\":\"Sec-Fetch-Site\"");
    assertThat(send(CHANGE, host, "Sec-Fetch-Site: same-site")).startsWith(REFUSED);
    assertThat(send(CHANGE, host, "Sec-Fetch-Site: same-origin")).startsWith("HTTP/1.1 405 ");
    assertThat(send(READ, host, "Sec-Fetch-Site: cross-site")).startsWith("HTTP/1.1 200 ");
  }

  @Test
  void sendsSecurityHeadersWithAnswersAndRefusals() throws Exception {
    for (String host : new String[] {"localhost", "rebound.example"}) {
      assertThat(send(READ, "Host: " + host))
          .contains("Content-Security-Policy: default-src 'self';")
          .contains("frame-ancestors 'none'")
          .contains("X-Content-Type-Options: nosniff")
          .contains("X-Frame-Options: DENY")
          .contains("Referrer-Policy: same-origin");
    }
  }

  private String send(String requestLine, String... headerLines) throws Exception {
    return new RawHttp(port).send(requestLine, headerLines);
  }
}
