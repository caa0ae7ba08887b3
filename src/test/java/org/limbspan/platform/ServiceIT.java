package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.limbspan.LimbspanApplication;
import org.limbspan.testing.ChildJvm;
import org.limbspan.testing.RawHttp;

/** The whole service as its owner starts and stops it, in a process of its own. */
class ServiceIT {

  @TempDir private Path home;

  @Test
  void servesUntilAskedToStop() throws Exception {
    long server;
    try (ChildJvm service = service()) {
      String started = service.await(line -> line.contains("Tomcat started on port"));
      int port = Integer.parseInt(started.replaceAll(".* on port (\\d+) .*", "$1"));
      service.await(line -> line.contains("Started LimbspanApplication"));
      assertThat(health(port)).startsWith("HTTP/1.1 200 ").contains("\"status\":\"UP\"");
      long killed = server();
      ProcessHandle.of(killed).orElseThrow().destroyForcibly();
      service.await(line -> line.contains("PostgreSQL is back"));
      assertThat(healthSoon(port)).startsWith("HTTP/1.1 200 ");
      server = server();
      assertThat(server).isNotEqualTo(killed);

      try (ChildJvm second = service()) {
        assertThat(second.exitCode()).isNotZero();
        assertThat(second.lines())
            .contains(
                "  | The home "
                    + home
                    + " is in use by another Limbspan service, process "
                    + service.pid()
                    + ".");
      }
      assertThat(ProcessHandle.of(server)).isPresent();

      service.stop();
      assertThat(service.lines()).anyMatch(line -> line.contains("PostgreSQL stopped"));
    }
    assertThat(postmaster()).doesNotExist();
  }

  private ChildJvm service() throws Exception {
    return ChildJvm.run(
        LimbspanApplication.class.getName(), "--server.port=0", "--limbspan.home=" + home);
  }

  private static String health(int port) throws Exception {
    return new RawHttp(port).send("GET /actuator/health", "Host: localhost");
  }

  /** The first asked may still meet a connection of the server that died. */
  private static String healthSoon(int port) throws Exception {
    String health = health(port);
    for (int i = 0; i < 20 && !health.startsWith("HTTP/1.1 200 "); i++) {
      Thread.sleep(250);
      health = health(port);
    }
    return health;
  }

  private long server() throws Exception {
    return Long.parseLong(Files.readAllLines(postmaster()).get(0));
  }

  private Path postmaster() {
    return home.resolve("database/postmaster.pid");
  }
}
