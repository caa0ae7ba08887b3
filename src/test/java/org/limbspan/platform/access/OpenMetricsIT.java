package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.OpenMetricsText;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;
import tools.jackson.databind.json.JsonMapper;

/** What the owner's own monitoring is told, and nobody else's. */
@LimbspanIT
@TestPropertySource(
    properties = {
      "limbspan.owner-password=" + OpenMetricsIT.PASSWORD,
      "management.prometheus.metrics.export.enabled=true"
    })
class OpenMetricsIT {

  static final String PASSWORD = "apogee-2037-perigee";

  private static final String PATH = "/actuator/openmetrics";
  private static final String OPENMETRICS = "application/openmetrics-text; version=1.0.0";
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  @LocalServerPort private int port;

  @Test
  void tellsTheOwnerInOpenMetrics() throws Exception {
    describe("metered");
    String readings =
        """
        taken_at,axis,diameter_px,uncertainty_px
        2024-03-01T21:00:00Z,horizontal,1700.5,1.5
        2024-03-01T22:00:00Z,horizontal,1701.5,1.5
        """;
    assertThat(send("/api/rigs/metered/readings", "text/csv", readings).statusCode())
        .isEqualTo(200);
    String wrong = readings.replace("2024", "2025").replace("1701.5", "-3");
    assertThat(send("/api/rigs/metered/readings", "text/csv", wrong).statusCode()).isEqualTo(422);
    assertThat(
            send(
                    "/api/rigs/metered/photos",
                    "multipart/form-data; boundary=limb",
                    """
                    --limb\r
                    Content-Disposition: form-data; name="photo"; filename="a.jpg"\r
                    Content-Type: image/jpeg\r
                    \r
                    no picture\r
                    --limb--\r
                    """)
                .statusCode())
        .isBetween(200, 422);

    Instant deadline = Instant.now().plus(PATIENCE);
    Map<String, Double> samples = scrape();
    while (samples.getOrDefault("limbspan_judging_duration_seconds_count", 0.0) < 1
        || samples.getOrDefault("limbspan_judging_behind_rigs", 1.0) > 0) {
      assertThat(Instant.now()).isBefore(deadline);
      Thread.sleep(200);
      samples = scrape();
    }
    assertThat(samples)
        .containsEntry("limbspan_readings_recorded_total", 2.0)
        .containsEntry("limbspan_reading_entries_refused_total", 1.0)
        .containsEntry("limbspan_photographs_measured_total", 0.0)
        .containsEntry("limbspan_photographs_refused_total{reason=\"not-an-image\"}", 1.0)
        .containsEntry(
            "limbspan_job_duration_seconds_count{job=\"ledger-copies\",outcome=\"failed\"}", 0.0)
        .containsKey("limbspan_judging_duration_seconds_sum")
        .containsKey("jvm_memory_used_bytes{area=\"heap\",id=\"" + heapPool(samples) + "\"}");
    assertThat(samples.get("limbspan_home_disk_free_bytes")).isPositive();
    // the table of the Moon ends with 2059
    assertThat(samples.get("limbspan_ephemeris_left_days"))
        .isCloseTo(
            (double)
                Duration.between(Instant.now(), Instant.parse("2060-01-01T00:00:00Z")).toDays(),
            org.assertj.core.data.Offset.offset(1.5));
    double ageS =
        Duration.between(Instant.parse("2024-03-01T22:00:00Z"), Instant.now()).toSeconds();
    assertThat(samples.get("limbspan_latest_reading_age_seconds{rig=\"metered\"}"))
        .isCloseTo(ageS, org.assertj.core.data.Offset.offset(60.0));
  }

  @Test
  void answersInTheSimplerTextFormatToWhoAsksForNoOther() {
    HttpResponse<String> answer = get("Authorization", basic(), "Accept", "*/*");
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Type").orElseThrow()).startsWith("text/plain");
  }

  @Test
  void tellsNobodyElse() throws Exception {
    describe("unmetered");
    JsonMapper mapper = new JsonMapper();
    String key =
        mapper
            .readTree(
                send("/api/rigs/unmetered/keys", "application/json", "{\"name\": \"k\"}").body())
            .path("key")
            .asString();
    String link =
        mapper
            .readTree(
                send("/api/rigs/unmetered/guest-links", "application/json", "{\"name\": \"g\"}")
                    .body())
            .path("path")
            .asString();
    assertThat(get("Accept", OPENMETRICS).statusCode()).isEqualTo(401);
    assertThat(get("Authorization", "Bearer " + key).statusCode()).isEqualTo(403);
    assertThat(get("Cookie", "limbspan-guest=" + link.substring("/guest/".length())).statusCode())
        .isEqualTo(403);
  }

  private Map<String, Double> scrape() {
    HttpResponse<String> answer = get("Authorization", basic(), "Accept", OPENMETRICS);
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Type").orElseThrow())
        .isEqualToIgnoringWhitespace("application/openmetrics-text;version=1.0.0;charset=utf-8");
    return OpenMetricsText.read(answer.body());
  }

  private static String heapPool(Map<String, Double> samples) {
    return samples.keySet().stream()
        .filter(name -> name.startsWith("jvm_memory_used_bytes{area=\"heap\""))
        .findFirst()
        .orElseThrow()
        .replaceAll(".*id=\"([^\"]*)\".*", "$1");
  }

  private void describe(String slug) {
    assertThat(
            send(
                    "/api/rigs",
                    "application/json",
                    """
                    {"slug": "%s", "name": "Invented", "latitudeDeg": 40, "longitudeDeg": -3,
                     "elevationM": 600, "timeZone": "Europe/Madrid"}"""
                        .formatted(slug))
                .statusCode())
        .isEqualTo(201);
  }

  private HttpResponse<String> send(String path, String type, String body) {
    return visit().post(path, type, body, "Authorization", basic());
  }

  private HttpResponse<String> get(String... headers) {
    try {
      return HttpClient.newHttpClient()
          .send(
              HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + PATH))
                  .headers(headers)
                  .build(),
              HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  private WebVisit visit() {
    return new WebVisit(port);
  }

  private static String basic() {
    return "Basic "
        + Base64.getEncoder()
            .encodeToString(("owner:" + PASSWORD).getBytes(StandardCharsets.UTF_8));
  }
}
