package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.web.servlet.client.RestTestClient;

/** Server-sent events as WHATWG HTML, section 9.2, has them on the wire. */
@LimbspanIT
class LiveIT {

  @Autowired private RestTestClient http;
  @LocalServerPort private int port;

  @Test
  void tellsOfNewReadingsAndOfTheRemarkThatFollows() throws Exception {
    ReferenceFolder folder = new ReferenceFolder("step-minus-1");
    RigClient rig = folder.describe(http, "live-step");
    HttpResponse<Stream<String>> stream = open("live-step");
    assertThat(stream.statusCode()).isEqualTo(200);
    assertThat(stream.headers().firstValue("Content-Type").orElse(""))
        .startsWith("text/event-stream");
    CompletableFuture<List<String>> news =
        CompletableFuture.supplyAsync(
            () ->
                stream
                    .body()
                    .filter(line -> line.startsWith("data:"))
                    .takeWhile(line -> !line.startsWith("data:A new remark: "))
                    .toList());

    rig.postCsv("/readings", folder.readings());

    assertThat(news.get(60, TimeUnit.SECONDS)).contains("data:New readings were entered.");
    stream.body().close();
  }

  @Test
  void knowsNoNewsOfARigThatIsNotThere() throws Exception {
    assertThat(open("live-nobody").statusCode()).isEqualTo(404);
  }

  private HttpResponse<Stream<String>> open(String slug) throws Exception {
    URI address = URI.create("http://127.0.0.1:" + port + "/rigs/" + slug + "/live");
    return HttpClient.newHttpClient()
        .send(HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.ofLines());
  }
}
