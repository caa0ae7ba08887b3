package org.limbspan.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.limbspan.LimbspanApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.FileSystemUtils;

/**
 * One more service in this JVM, with a home and a port of its own, over a database that is given.
 */
public final class ServiceInstance implements AutoCloseable {

  private final ConfigurableApplicationContext context;
  private final Path home;

  private ServiceInstance(ConfigurableApplicationContext context, Path home) {
    this.context = context;
    this.home = home;
  }

  /** Starts it. */
  public static ServiceInstance over(TestDatabase database, String... properties) {
    Path home = freshHome();
    List<String> arguments = new ArrayList<>(List.of(properties));
    arguments.add("--server.port=0");
    arguments.add("--spring.jmx.enabled=false");
    arguments.add("--spring.datasource.url=" + database.url());
    arguments.add("--spring.datasource.username=" + database.username());
    arguments.add("--spring.datasource.password=" + database.password());
    arguments.add("--limbspan.home=" + home);
    ConfigurableApplicationContext context =
        new SpringApplicationBuilder(LimbspanApplication.class)
            .web(WebApplicationType.SERVLET)
            .run(arguments.toArray(String[]::new));
    return new ServiceInstance(context, home);
  }

  private static Path freshHome() {
    try {
      return Files.createTempDirectory("limbspan-instance-home");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Such as {@code http://127.0.0.1:8080}. */
  public String address() {
    return "http://127.0.0.1:" + context.getEnvironment().getProperty("local.server.port");
  }

  public RestTestClient http() {
    return RestTestClient.bindToServer().baseUrl(address()).build();
  }

  public <T> T bean(Class<T> type) {
    return context.getBean(type);
  }

  @Override
  public void close() {
    context.close();
    FileSystemUtils.deleteRecursively(home.toFile());
  }
}
