package org.limbspan.testing;

import java.nio.charset.StandardCharsets;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.test.web.servlet.client.RestTestClient.RequestHeadersSpec;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Talks to the service over HTTP about one rig, as any client would. */
public final class RigClient {

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final MediaType CSV = MediaType.parseMediaType("text/csv");

  private final RestTestClient http;
  private final String slug;

  public RigClient(RestTestClient http, String slug) {
    this.http = http;
    this.slug = slug;
  }

  /** Describes a rig in an invented garden. */
  public static RigClient described(RestTestClient http, String slug) {
    RigClient client = new RigClient(http, slug);
    Answer answer =
        client.describe(
            """
            {"slug": "%s", "name": "Invented garden", "latitudeDeg": 48.2, "longitudeDeg": 16.4,
             "elevationM": 170, "timeZone": "Europe/Vienna"}"""
                .formatted(slug));
    if (answer.status() != 201) {
      throw new AssertionError("rig not described: " + answer);
    }
    return client;
  }

  public String slug() {
    return slug;
  }

  public Answer describe(String json) {
    return post("/api/rigs", MediaType.APPLICATION_JSON, json);
  }

  public Answer postJson(String path, String json) {
    return post("/api/rigs/" + slug + path, MediaType.APPLICATION_JSON, json);
  }

  public Answer postCsv(String path, String csv) {
    return post("/api/rigs/" + slug + path, CSV, csv);
  }

  public Answer postCsv(String path, byte[] csv) {
    return exchange(http.post().uri("/api/rigs/" + slug + path).contentType(CSV).body(csv));
  }

  public Answer putJson(String path, String json) {
    return put(path, MediaType.APPLICATION_JSON, json);
  }

  public Answer putCsv(String path, String csv) {
    return put(path, CSV, csv);
  }

  private Answer put(String path, MediaType type, String body) {
    return exchange(
        http.put()
            .uri("/api/rigs/" + slug + path)
            .contentType(type)
            .body(body.getBytes(StandardCharsets.UTF_8)));
  }

  public Answer get(String path) {
    return getAt("/api/rigs/" + slug + path);
  }

  public Answer getAt(String uri) {
    return exchange(http.get().uri(uri).accept(MediaType.APPLICATION_JSON));
  }

  /** The answer as text, with that media type asked for. */
  public String getText(String path, String accept) {
    byte[] body =
        http.get()
            .uri("/api/rigs/" + slug + path)
            .accept(MediaType.parseMediaType(accept))
            .exchange()
            .expectStatus()
            .isOk()
            .expectBody()
            .returnResult()
            .getResponseBodyContent();
    return new String(body, StandardCharsets.UTF_8);
  }

  private Answer post(String uri, MediaType type, String body) {
    return exchange(
        http.post().uri(uri).contentType(type).body(body.getBytes(StandardCharsets.UTF_8)));
  }

  private static Answer exchange(RequestHeadersSpec<?> request) {
    var result = request.exchange().expectBody().returnResult();
    byte[] body = result.getResponseBodyContent();
    JsonNode json =
        body.length == 0 ? MAPPER.getNodeFactory().stringNode("") : MAPPER.readTree(body);
    return new Answer(result.getStatus().value(), json);
  }
}
