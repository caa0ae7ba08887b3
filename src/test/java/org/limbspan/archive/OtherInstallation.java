package org.limbspan.archive;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.Map;
import org.limbspan.LimbspanApplication;
import org.limbspan.testing.TestDatabase;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.test.web.servlet.client.RestTestClient;

/** A second service with an empty database, in the same JVM. */
final class OtherInstallation implements AutoCloseable {

  private final ConfigurableApplicationContext context;
  private final String address;

  OtherInstallation() {
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
            .run("--server.port=0", "--spring.datasource.url=" + database.url());
    address = "http://127.0.0.1:" + context.getEnvironment().getProperty("local.server.port");
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
  }
}
