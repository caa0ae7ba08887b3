package org.limbspan.archive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.limbspan.LimbspanApplication;
import org.limbspan.testing.TestDatabase;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.FileSystemUtils;

/** A second service with an empty database, in the same JVM. */
final class OtherInstallation implements AutoCloseable {

  private final ConfigurableApplicationContext context;
  private final String address;

  private final Path home;

  OtherInstallation() {
    try {
      home = Files.createTempDirectory("limbspan-other-home");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    TestDatabase database = TestDatabase.fresh();
    Map<String, Object> settings =
        Map.of(
            "server.port", "0",
            "spring.jmx.enabled", "false",
            "spring.datasource.url", database.url(),
            "spring.datasource.username", database.username(),
            "spring.datasource.password", database.password());
    context =
        new SpringApplicationBuilder(LimbspanApplication.class)
            .web(WebApplicationType.SERVLET)
            .properties(settings)
            .run(
                "--server.port=0",
                "--spring.datasource.url=" + database.url(),
                "--limbspan.home=" + home);
    address = "http://127.0.0.1:" + context.getEnvironment().getProperty("local.server.port");
  }

  Path home() {
    return home;
  }

  RestTestClient http() {
    return RestTestClient.bindToServer().baseUrl(address).build();
  }

  /** Sends a ledger; answers status and body. */
  HttpResponse<String> take(byte[] ledger) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create(address + "/api/ledger"))
                .header("Content-Type", "application/zip")
                .POST(HttpRequest.BodyPublishers.ofByteArray(ledger))
                .build(),
            HttpResponse.BodyHandlers.ofString());
  }

  @Override
  public void close() {
    context.close();
    FileSystemUtils.deleteRecursively(home.toFile());
  }
}
