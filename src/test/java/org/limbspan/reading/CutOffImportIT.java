package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.limbspan.LimbspanApplication;
import org.limbspan.testing.ChildJvm;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The whole service in a process of its own, killed with its database during an import. */
class CutOffImportIT {

  private static final int LINES = 10_000;
  private static final Instant FIRST = Instant.parse("2024-03-01T00:00:00Z");
  private static final Pattern PORT = Pattern.compile("Tomcat started on port (\\d+)");
  private static final String RIG =
      """
      {"slug": "cut-off", "name": "Invented garden", "latitudeDeg": 48.2, "longitudeDeg": 16.4,
       "elevationM": 170, "timeZone": "Europe/Vienna"}
      """;

  private final HttpClient http = HttpClient.newHttpClient();
  private final String csv = csv();
  private int port;

  @TempDir private Path home;

  @Test
  void holdsEveryLineOnceAfterServiceAndDatabaseWereKilledAtThreeMoments() throws Exception {
    for (long millisIntoTheImport : new long[] {60, 350, 900}) {
      try (ChildJvm service = start()) {
        describeOnce();
        CompletableFuture<HttpResponse<String>> cutOff =
            http.sendAsync(
                post("/api/rigs/cut-off/readings", csv, "text/csv"), BodyHandlers.ofString());
        Thread.sleep(millisIntoTheImport);
        killWithDatabase(service);
        assertThat(cutOff.handle((answer, failure) -> true).get()).isTrue();
      }
    }

    try (ChildJvm service = start()) {
      // one request, one transaction: the cut-off imports left all of the lines or none
      assertThat(heldInstants()).hasSize(heldInstants().isEmpty() ? 0 : LINES);
      JsonNode answer = send(post("/api/rigs/cut-off/readings", csv, "text/csv"));
      assertThat(answer.path("stored").asInt() + answer.path("alreadyHeld").asInt())
          .isEqualTo(LINES);

      List<String> held = heldInstants();
      assertThat(held).hasSize(LINES);
      Set<String> different = new HashSet<>(held);
      assertThat(different).hasSize(LINES);
      assertThat(service.stop()).isEqualTo(143); // ended by SIGTERM, in order
    }
  }

  private ChildJvm start() throws IOException, InterruptedException {
    ChildJvm service =
        ChildJvm.run(
            LimbspanApplication.class.getName(), "--server.port=0", "--limbspan.home=" + home);
    Matcher line = PORT.matcher(service.await(text -> PORT.matcher(text).find()));
    assertThat(line.find()).isTrue();
    port = Integer.parseInt(line.group(1));
    return service;
  }

  private void killWithDatabase(ChildJvm service) throws IOException, InterruptedException {
    long postmaster;
    try (var found = Files.find(home, 4, (path, its) -> path.endsWith("postmaster.pid"))) {
      postmaster = Long.parseLong(Files.readAllLines(found.findFirst().orElseThrow()).get(0));
    }
    service.kill();
    ProcessHandle.of(postmaster).ifPresent(ProcessHandle::destroyForcibly);
  }

  private void describeOnce() throws IOException, InterruptedException {
    HttpResponse<String> answer =
        http.send(post("/api/rigs", RIG, "application/json"), BodyHandlers.ofString());
    assertThat(answer.statusCode()).isIn(201, 409);
  }

  private List<String> heldInstants() throws IOException, InterruptedException {
    List<String> instants = new ArrayList<>();
    String after = "";
    while (true) {
      JsonNode page = send(get("/api/rigs/cut-off/readings?limit=5000" + after));
      page.path("readings").forEach(reading -> instants.add(reading.path("takenAt").asString()));
      if (!page.has("next")) {
        return instants;
      }
      after = "&after=" + page.path("next").asString();
    }
  }

  private JsonNode send(HttpRequest request) throws IOException, InterruptedException {
    HttpResponse<String> answer = http.send(request, BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    return new JsonMapper().readTree(answer.body());
  }

  private HttpRequest post(String path, String body, String type) {
    return HttpRequest.newBuilder(at(path))
        .header("Content-Type", type)
        .POST(BodyPublishers.ofString(body))
        .build();
  }

  private HttpRequest get(String path) {
    return HttpRequest.newBuilder(at(path)).build();
  }

  private URI at(String path) {
    return URI.create("http://127.0.0.1:" + port + path);
  }

  /** Invented diameters every seven minutes. */
  private static String csv() {
    return IntStream.range(0, LINES)
        .mapToObj(i -> FIRST.plusSeconds(420L * i) + ",horizontal," + (1600 + i % 200) + ".5,1.5")
        .collect(Collectors.joining("\n", "taken_at,axis,diameter_px,uncertainty_px\n", "\n"));
  }
}
