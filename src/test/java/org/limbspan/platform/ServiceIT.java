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
  void servesUntilAskedToStopAndRefusesASecondOnItsHome() throws Exception {
    long server;
    try (ChildJvm service = service()) {
      String started = service.await(line -> line.contains("Tomcat started on port"));
      int port = Integer.parseInt(started.replaceAll(".* on port (\\d+) .*", "$1"));
      service.await(line -> line.contains("Started LimbspanApplication"));
      assertThat(new RawHttp(port).send("GET /actuator/health", "Host: localhost"))
          .startsWith("HTTP/1.1 200 ")
          .contains("\"status\":\"UP\"");
      server = Long.parseLong(Files.readAllLines(postmaster()).get(0));

      try (ChildJvm second = service()) {
        assertThat(second.exitCode()).isNotZero();
        assertThat(second.lines())
            .contains(
                "The home "
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

  private Path postmaster() {
    return home.resolve("database/postmaster.pid");
  }
}
