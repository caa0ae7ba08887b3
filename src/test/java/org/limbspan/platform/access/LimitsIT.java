package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;

/** More than is taken is refused with a word on what to do. */
@LimbspanIT
@TestPropertySource(
    properties = {
      "limbspan.limits.body=4KB",
      "limbspan.limits.per-minute=20",
      "limbspan.limits.at-once=2",
      "limbspan.limits.patience=100ms",
      "limbspan.proxies=127.0.0.1"
    })
class LimitsIT {

  private final HttpClient client = HttpClient.newHttpClient();

  @Autowired private RestTestClient http;

  @LocalServerPort private int port;

  @Test
  void refusesALongBodyByItsAnnouncementAndAsItComes() throws Exception {
    RigClient rig = RigClient.described(http, "limits-body");
    byte[] json = ("[" + " ".repeat(5000) + "]").getBytes(StandardCharsets.UTF_8);
    byte[] csv =
        ("taken_at,axis,diameter_px,uncertainty_px\n" + ",".repeat(5000) + "\n")
            .getBytes(StandardCharsets.UTF_8);
    for (byte[] body : List.of(json, csv)) {
      String type = body == json ? "application/json" : "text/csv";
      for (HttpRequest.BodyPublisher publisher :
          List.of(
              HttpRequest.BodyPublishers.ofByteArray(body),
              HttpRequest.BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body)))) {
        HttpResponse<String> answer = post("/api/rigs/limits-body/readings", type, publisher);
        assertThat(answer.statusCode()).as(type + ": " + answer.body()).isEqualTo(413);
        assertThat(answer.body()).contains("limbspan.limits.body");
      }
    }
    assertThat(rig.get("/readings").status()).isEqualTo(200);
  }

  @Test
  void makesAClientOfElsewhereWaitAndNobodyElse() throws Exception {
    int refused = 0;
    for (int i = 0; i < 40; i++) {
      HttpResponse<String> answer = get("X-Forwarded-For", "198.51.100.20");
      if (answer.statusCode() == 429) {
        refused++;
        assertThat(answer.headers().firstValueAsLong("Retry-After").orElseThrow())
            .isBetween(1L, 60L);
      }
    }
    assertThat(refused).isPositive();
    assertThat(get("X-Forwarded-For", "198.51.100.21").statusCode()).isEqualTo(200);
    for (int i = 0; i < 40; i++) {
      assertThat(get("Accept", "*/*").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void makesAKeyWaitEvenAtHome() throws Exception {
    int refused = 0;
    for (int i = 0; i < 40; i++) {
      refused += get("Authorization", "Bearer limbspan-rig-some").statusCode() == 429 ? 1 : 0;
    }
    assertThat(refused).isPositive();
  }

  @Test
  void letsTwoSendMuchAndAsksTheThirdToComeAgain() throws Exception {
    RigClient.described(http, "limits-heavy");
    List<Socket> slow = new ArrayList<>();
    try {
      for (int i = 0; i < 2; i++) {
        slow.add(unfinished());
      }
      HttpResponse<String> third = csv();
      for (int i = 0; i < 50 && third.statusCode() != 503; i++) {
        Thread.sleep(100);
        third = csv();
      }
      assertThat(third.statusCode()).isEqualTo(503);
      assertThat(third.headers().firstValue("Retry-After")).hasValue("5");
      assertThat(get("Accept", "*/*").statusCode()).isEqualTo(200);
    } finally {
      for (Socket socket : slow) {
        socket.close();
      }
    }
    HttpResponse<String> later = csv();
    for (int i = 0; i < 100 && later.statusCode() == 503; i++) {
      Thread.sleep(100);
      later = csv();
    }
    assertThat(later.statusCode()).isEqualTo(200);
  }

  private HttpResponse<String> csv() throws Exception {
    return post(
        "/api/rigs/limits-heavy/readings",
        "text/csv",
        HttpRequest.BodyPublishers.ofString(
            "taken_at,axis,diameter_px,uncertainty_px\n2026-03-02T22:30:00Z,horizontal,1680,1.5\n"));
  }

  /** A CSV file of which only the header line arrives. */
  private Socket unfinished() throws IOException {
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
    OutputStream out = socket.getOutputStream();
    out.write(
        ("POST /api/rigs/limits-heavy/readings HTTP/1.1\r\nHost: 127.0.0.1:"
                + port
                + "\r\nContent-Type: text/csv\r\nContent-Length: 1000\r\n\r\n"
                + "taken_at,axis,diameter_px,uncertainty_px\r\n")
            .getBytes(StandardCharsets.US_ASCII));
    out.flush();
    return socket;
  }

  private HttpResponse<String> get(String header, String value) throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/api/rigs"))
            .header(header, value)
            .GET()
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private HttpResponse<String> post(String path, String type, HttpRequest.BodyPublisher body)
      throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
            .header("Content-Type", type)
            .POST(body)
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }
}
