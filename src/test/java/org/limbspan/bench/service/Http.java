package org.limbspan.bench.service;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One client of the service. */
final class Http {

  /** Also what a client sees where no answer came at all. */
  static final int NO_ANSWER = -1;

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final Duration PATIENCE = Duration.ofSeconds(100);

  private final HttpClient client =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          .connectTimeout(Duration.ofSeconds(5))
          .build();
  private final URI base;

  Http(URI base) {
    this.base = base;
  }

  /** Status and body; {@link #NO_ANSWER} where the connection was refused or broke. */
  Reply post(String path, String type, String body) throws InterruptedException {
    return send(
        HttpRequest.newBuilder(base.resolve(path))
            .header("Content-Type", type)
            .POST(BodyPublishers.ofString(body)));
  }

  /** The same with a file as the body. */
  Reply postFile(String path, String type, Path file) throws IOException, InterruptedException {
    return send(
        HttpRequest.newBuilder(base.resolve(path))
            .header("Content-Type", type)
            .POST(BodyPublishers.ofFile(file)));
  }

  Reply get(String path) throws InterruptedException {
    return send(HttpRequest.newBuilder(base.resolve(path)).header("Accept", "application/json"));
  }

  int status(String path) throws InterruptedException {
    return get(path).status();
  }

  /** The body as it comes. */
  InputStream stream(String path) throws IOException, InterruptedException {
    HttpResponse<InputStream> answer =
        client.send(
            HttpRequest.newBuilder(base.resolve(path)).timeout(PATIENCE).build(),
            BodyHandlers.ofInputStream());
    if (answer.statusCode() != 200) {
      answer.body().close();
      throw new IOException("status " + answer.statusCode());
    }
    return answer.body();
  }

  private Reply send(HttpRequest.Builder request) throws InterruptedException {
    try {
      HttpResponse<String> answer =
          client.send(request.timeout(PATIENCE).build(), BodyHandlers.ofString());
      return new Reply(answer.statusCode(), answer.body());
    } catch (IOException e) {
      return new Reply(NO_ANSWER, String.valueOf(e.getMessage()));
    }
  }

  record Reply(int status, String body) {

    JsonNode json() {
      return MAPPER.readTree(body);
    }

    /** The problem's title and detail, or what else there is. */
    @Nullable String problem() {
      if (status == NO_ANSWER) {
        return body;
      }
      if (!body.startsWith("{")) {
        return body.isBlank() ? null : body.lines().findFirst().orElse(null);
      }
      JsonNode json = json();
      return json.path("title").asString("") + ": " + json.path("detail").asString("");
    }
  }
}
