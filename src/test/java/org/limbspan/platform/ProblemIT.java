package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.test.web.servlet.client.RestTestClient.BodyContentSpec;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Each way in which a request can go wrong, as the client sees it. */
@LimbspanIT
@Import(ProblemIT.Probe.class)
class ProblemIT {

  @Autowired private RestTestClient client;

  record Sent(Instant takenAt, @Nullable Double diameterPx, @Nullable Kind kind) {}

  enum Kind {
    FIRST,
    SECOND
  }

  @RestController
  static class Probe {

    @Autowired private JdbcClient jdbc;

    @PostMapping("/api/probe")
    String take(@RequestBody List<Sent> sent) {
      return "taken";
    }

    @GetMapping("/api/probe")
    String ask(@RequestParam Instant at) {
      return "asked";
    }

    @GetMapping("/api/probe/{what}")
    String fail(@PathVariable String what) {
      switch (what) {
        case "conflict" -> throw new Conflict("Held otherwise.", new Violation("at", 3, "2"));
        case "missing" -> throw new NotFound("rig", "slug", what);
        case "invalid" -> throw InvalidInput.inBody("note", "x".repeat(5000), "a short text");
        case "sql" -> jdbc.sql("select secret from nowhere").query().listOfRows();
        case "duplicate" -> duplicate();
        case "shutdown" ->
            jdbc.sql("select pg_terminate_backend(pg_backend_pid())").query().listOfRows();
        default -> throw new IllegalStateException("secret");
      }
      return "";
    }

    @GetMapping("/api/probe-stream")
    void stream(OutputStream out) throws IOException {
      out.write("taken_at,axis\n".repeat(10_000).getBytes(StandardCharsets.UTF_8));
      out.flush();
      throw new IllegalStateException("in the middle");
    }

    private void duplicate() {
      jdbc.sql("create table if not exists probe_key (id int primary key)").update();
      jdbc.sql("insert into probe_key values (1) on conflict do nothing").update();
      jdbc.sql("insert into probe_key values (1)").update();
    }
  }

  @Test
  void namesFieldValueAndPlaceOfAWrongJsonValue() {
    post("[{\"takenAt\":\"2026-05-02T21:14:00Z\"},{\"takenAt\":\"2026-05-02T21:14:00\"}]", 422)
        .jsonPath("$.violations[0].field")
        .isEqualTo("takenAt")
        .jsonPath("$.violations[0].value")
        .isEqualTo("2026-05-02T21:14:00")
        .jsonPath("$.violations[0].line")
        .isEqualTo(2)
        .jsonPath("$.violations[0].expected")
        .value(
            String.class,
            text -> assertThat(text).startsWith("an instant in ISO 8601 with an offset"));
    post("[{\"diameterPx\":\"wide\"}]", 422)
        .jsonPath("$.violations[0].field")
        .isEqualTo("diameterPx")
        .jsonPath("$.violations[0].expected")
        .isEqualTo("a number");
    post("[{\"kind\":\"THIRD\"}]", 422)
        .jsonPath("$.violations[0].expected")
        .isEqualTo("one of FIRST, SECOND");
  }

  @Test
  void saysWhereMalformedJsonBreaksOff() {
    post("[{\"takenAt\":", 400)
        .jsonPath("$.detail")
        .value(String.class, text -> assertThat(text).contains("line 1, column"));
    post("", 400).jsonPath("$.detail").isEqualTo("The body is missing or cannot be read.");
  }

  @Test
  void namesAWrongOrMissingParameter() {
    get("/api/probe?at=yesterday", 400)
        .jsonPath("$.violations[0].field")
        .isEqualTo("at")
        .jsonPath("$.violations[0].value")
        .isEqualTo("yesterday");
    get("/api/probe", 400).jsonPath("$.violations[0].value").isEqualTo(null);
  }

  @Test
  void tellsProblemsWithTheirCategory() {
    get("/api/probe/conflict", 409).jsonPath("$.detail").isEqualTo("Held otherwise.");
    get("/api/probe/missing", 404)
        .jsonPath("$.detail")
        .isEqualTo("There is no rig 'missing'.")
        .jsonPath("$.instance")
        .isEqualTo("/api/probe/missing");
    get("/api/probe/duplicate", 409).jsonPath("$.title").isEqualTo("In conflict with what is held");
  }

  @Test
  void cutsLongValues() {
    get("/api/probe/invalid", 422)
        .jsonPath("$.violations[0].value")
        .value(String.class, text -> assertThat(text).matches("x{120}\\.\\.\\."));
  }

  @Test
  void keepsItsInsidesToItself() {
    for (String what : List.of("sql", "other")) {
      client
          .get()
          .uri("/api/probe/" + what)
          .exchange()
          .expectStatus()
          .isEqualTo(500)
          .expectBody(String.class)
          .value(body -> assertThat(body).doesNotContain("secret", "nowhere", "java."));
    }
  }

  @Test
  void asksToComeBackWhenTheDatabaseGoesAway() {
    client
        .get()
        .uri("/api/probe/shutdown")
        .exchange()
        .expectStatus()
        .isEqualTo(503)
        .expectHeader()
        .valueEquals(HttpHeaders.RETRY_AFTER, "5")
        .expectBody()
        .jsonPath("$.title")
        .isEqualTo("Not available just now");
  }

  @Test
  void saysWhatIsTakenInstead() {
    client
        .post()
        .uri("/api/probe")
        .contentType(MediaType.TEXT_PLAIN)
        .body("x")
        .exchange()
        .expectStatus()
        .isEqualTo(415)
        .expectBody()
        .jsonPath("$.violations[0].expected")
        .value(String.class, text -> assertThat(text).contains("application/json"));
    client.put().uri("/api/probe").exchange().expectStatus().isEqualTo(405);
  }

  @Test
  void answersAProblemWhateverTheClientAccepts() {
    client
        .get()
        .uri("/api/probe/missing")
        .accept(MediaType.parseMediaType("text/csv"))
        .exchange()
        .expectStatus()
        .isNotFound()
        .expectHeader()
        .contentType(MediaType.APPLICATION_PROBLEM_JSON);
  }

  @Test
  void cutsOffAStreamThatBreaksInsteadOfAddingToIt() {
    assertThatThrownBy(
            () ->
                client
                    .get()
                    .uri("/api/probe-stream")
                    .exchange()
                    .expectBody(String.class)
                    .returnResult())
        .hasStackTraceContaining("IOException");
  }

  @Test
  void showsABrowserAPage() {
    client
        .get()
        .uri("/no-such-page")
        .accept(MediaType.TEXT_HTML)
        .exchange()
        .expectStatus()
        .isNotFound()
        .expectHeader()
        .contentTypeCompatibleWith(MediaType.TEXT_HTML)
        .expectBody(String.class)
        .value(body -> assertThat(body).contains("404").doesNotContain("java."));
  }

  private BodyContentSpec post(String json, int status) {
    return client
        .post()
        .uri("/api/probe")
        .contentType(MediaType.APPLICATION_JSON)
        .body(json)
        .exchange()
        .expectStatus()
        .isEqualTo(status)
        .expectHeader()
        .contentType(MediaType.APPLICATION_PROBLEM_JSON)
        .expectBody()
        .jsonPath("$.detail")
        .value(String.class, text -> assertThat(text).doesNotContain("tools.jackson"));
  }

  private BodyContentSpec get(String uri, int status) {
    return client
        .get()
        .uri(uri)
        .exchange()
        .expectStatus()
        .isEqualTo(status)
        .expectHeader()
        .contentType(MediaType.APPLICATION_PROBLEM_JSON)
        .expectBody();
  }
}
