package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.LimbspanApplication;
import org.limbspan.testing.ChildJvm;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Everything that a service of its own writes while it is talkative: no secret is in it, and no
 * line of it is a client's.
 */
class SecretsInLogIT {

  private static final String PASSWORD = "waxing-gibbous-2041-secret";
  private static final String MISTYPED = "waxing-gibbous-2041-sceret";
  private static final String NO_KEY = "limbspan-rig-mistyped0by1somebody2in3the4garden5";
  private static final String NO_LINK = "limbspan-guest-mistyped0by1a2friend3of4the5garden";
  private static final String FORGED = "2026-01-01T00:00:00.000Z ERROR 1 --- forged";
  private static final JsonMapper MAPPER = new JsonMapper();

  @TempDir private Path home;

  private final List<String> secrets =
      new ArrayList<>(List.of(PASSWORD, MISTYPED, NO_KEY, NO_LINK));

  @ParameterizedTest
  @ValueSource(strings = {"", "ecs"})
  void writesNoSecretAndNoForgedLine(String format) throws Exception {
    List<String> lines;
    HttpResponse<String> refused;
    try (ChildJvm service = service(format)) {
      String started = service.await(line -> line.contains("Tomcat started on port"));
      service.await(line -> line.contains("Started LimbspanApplication"));
      refused = visit(Integer.parseInt(started.replaceAll(".* on port (\\d+) .*", "$1")));
      service.stop();
      lines = service.lines();
    }
    secrets.add(Files.readString(home.resolve("database/limbspan.password")).strip());
    assertThat(secrets).hasSize(11).allMatch(secret -> secret.length() >= 20);
    String all = String.join("\n", lines);
    for (String secret : secrets) {
      assertThat(all).doesNotContain(secret);
      assertThat(all).doesNotContain(WebVisit.encoded(secret));
    }
    // it was talkative indeed, of the very requests that carried secrets
    assertThat(all)
        .contains("/guest/limbspan-guest-...")
        .contains("POST /login")
        .contains("POST /api/rigs/secretive/readings")
        .contains("forged");
    assertThat(lines).noneMatch(line -> line.startsWith("2026-01-01T00:00:00.000Z"));

    String id = MAPPER.readTree(refused.body()).path("request").asString();
    assertThat(id).matches("[0-9a-f]{16}");
    assertThat(refused.headers().allValues("Limbspan-Request")).containsExactly(id);
    List<String> ofRequest = lines.stream().filter(line -> line.contains(id)).toList();
    assertThat(ofRequest).isNotEmpty().allMatch(line -> line.contains("secretive"));
    if (format.equals("ecs")) {
      for (String line : ofRequest) {
        JsonNode event = MAPPER.readTree(line);
        assertThat(event.path("request").asString()).isEqualTo(id);
        assertThat(event.path("rig").asString()).isEqualTo("secretive");
      }
      assertThat(lines)
          .anyMatch(line -> line.contains("\"rigId\":\"1\"") && line.contains("judged rig 1"));
    } else {
      assertThat(ofRequest).anyMatch(line -> line.contains("[ " + id + " secretive] "));
    }
  }

  /** Answers what was said to a reading with line breaks in it. */
  private HttpResponse<String> visit(int port) {
    WebVisit owner = new WebVisit(port);
    owner.logIn(MISTYPED, "/");
    owner.page("/login");
    owner.logIn(PASSWORD, "/");
    owner.page("/contents");
    secrets.add(owner.cookie(WebVisit.LOGIN));
    secrets.add(owner.cookie(WebVisit.PAGE));
    String basic = basic(PASSWORD);
    secrets.add(basic.substring("Basic ".length()));
    secrets.add(basic(MISTYPED).substring("Basic ".length()));
    WebVisit program = new WebVisit(port);
    program.post(
        "/api/rigs",
        "application/json",
        """
        {"slug": "secretive", "name": "Invented", "latitudeDeg": 40, "longitudeDeg": -3,
         "elevationM": 600, "timeZone": "Europe/Madrid"}""",
        "Authorization",
        basic);
    program.page("/api/rigs", "Authorization", basic(MISTYPED));
    String key = said(program, "/api/rigs/secretive/keys", basic).path("key").asString();
    String path = said(program, "/api/rigs/secretive/guest-links", basic).path("path").asString();
    secrets.add(key);
    secrets.add(path.substring("/guest/".length()));
    String reading = "taken_at,axis,diameter_px,uncertainty_px\n%s,horizontal,1700,1.5\n";
    String readings = "/api/rigs/secretive/readings";
    String instant = "2024-03-01T21:00:00Z";
    assertThat(
            program
                .post(
                    readings,
                    "text/csv",
                    reading.formatted(instant),
                    "Authorization",
                    "Bearer " + key)
                .statusCode())
        .isEqualTo(200);
    program.post(readings, "text/csv", "", "Authorization", "Bearer " + NO_KEY);
    WebVisit guest = new WebVisit(port);
    assertThat(guest.page(path).statusCode()).isEqualTo(303);
    assertThat(guest.page("/rigs/secretive").statusCode()).isEqualTo(200);
    guest.page("/guest/" + NO_LINK);
    new WebVisit(port).page("/contents%0a" + FORGED.replace(" ", "%20"), "Authorization", basic);
    HttpResponse<String> refused =
        program.post(
            readings,
            "text/csv",
            reading.formatted("\"x\n" + FORGED + "\""),
            "Authorization",
            "Bearer " + key);
    assertThat(refused.statusCode()).isEqualTo(422);
    return refused;
  }

  private static JsonNode said(WebVisit program, String path, String basic) {
    return MAPPER.readTree(
        program
            .post(path, "application/json", "{\"name\": \"of a friend\"}", "Authorization", basic)
            .body());
  }

  private static String basic(String password) {
    return "Basic "
        + Base64.getEncoder()
            .encodeToString(("owner:" + password).getBytes(StandardCharsets.UTF_8));
  }

  private ChildJvm service(String format) throws Exception {
    return ChildJvm.run(
        LimbspanApplication.class.getName(),
        "--server.port=0",
        "--limbspan.home=" + home,
        "--limbspan.owner-password=" + PASSWORD,
        "--logging.level.org.limbspan=DEBUG",
        "--logging.level.org.springframework.security=DEBUG",
        "--logging.level.org.springframework.web=DEBUG",
        "--logging.level.com.zaxxer.hikari=DEBUG",
        "--logging.structured.format.console=" + format);
  }
}
