package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.AsyncContext;
import jakarta.servlet.AsyncEvent;
import jakarta.servlet.AsyncListener;
import jakarta.servlet.http.HttpServlet;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import org.apache.catalina.Context;
import org.apache.catalina.LifecycleException;
import org.apache.catalina.connector.Connector;
import org.apache.catalina.startup.Tomcat;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SleepingConnectorTest {

  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final Tomcat tomcat = new Tomcat();
  private final HttpClient client = HttpClient.newHttpClient();
  private @TempDir Path folder;

  @BeforeEach
  void start() throws LifecycleException {
    tomcat.setBaseDir(folder.toString());
    Connector connector = new Connector(SleepingConnector.class.getName());
    connector.setPort(0);
    connector.setProperty("address", "127.0.0.1");
    tomcat.setConnector(connector);
    Context context = tomcat.addContext("", folder.toString());
    Tomcat.addServlet(context, "waiting", new Waiting()).setAsyncSupported(true);
    context.addServletMapping("/", "waiting");
    tomcat.start();
  }

  @AfterEach
  void stop() throws LifecycleException {
    tomcat.stop();
    tomcat.destroy();
  }

  /**
   * Nothing else ends such an answer: the clock runs as soon as somebody waits, and again later.
   */
  @Test
  void endsALongAnswerAtItsTime() throws IOException, InterruptedException {
    assertThat(answer()).isEqualTo("over");
    assertThat(answer()).isEqualTo("over");
  }

  private String answer() throws IOException, InterruptedException {
    URI address = URI.create("http://127.0.0.1:" + tomcat.getConnector().getLocalPort() + "/");
    return client
        .send(
            HttpRequest.newBuilder(address).timeout(PATIENCE).build(),
            HttpResponse.BodyHandlers.ofString())
        .body();
  }

  /** Waits for something that never comes. */
  private static final class Waiting extends HttpServlet {

    private static final long serialVersionUID = 1;

    @Override
    protected void doGet(HttpServletRequest request, HttpServletResponse response) {
      AsyncContext waiting = request.startAsync();
      waiting.setTimeout(300);
      waiting.addListener(new Ending());
    }
  }

  private static final class Ending implements AsyncListener {

    @Override
    public void onTimeout(AsyncEvent event) throws IOException {
      event.getAsyncContext().getResponse().getWriter().print("over");
      event.getAsyncContext().complete();
    }

    @Override
    public void onComplete(AsyncEvent event) {}

    @Override
    public void onError(AsyncEvent event) {}

    @Override
    public void onStartAsync(AsyncEvent event) {}
  }
}
