package org.limbspan.bench.service;

import static org.limbspan.bench.service.Bench.awaitJudged;
import static org.limbspan.bench.service.Bench.behind;
import static org.limbspan.bench.service.Bench.byClients;
import static org.limbspan.bench.service.Bench.count;
import static org.limbspan.bench.service.Bench.require;
import static org.limbspan.bench.service.Bench.secondsSince;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.limbspan.sky.Site;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;
import org.springframework.util.FileSystemUtils;

/**
 * CSV readings of invented rigs into the service, beside PostgreSQL's own COPY of the same rows
 * into the same table, emptied, from as many clients. The service has both compilers, as a server
 * for many rigs would. Arguments: readings (1000000), rigs (200), jar (target/limbspan.jar), heap
 * (256m), clients (2).
 */
public final class IntakeBench {

  private static final int WARM_UPS = 10;
  private static final int QUARTERS = 4;

  private final int rigs;
  private final int each;
  private final int clients;

  private IntakeBench(int readings, int rigs, int clients) {
    this.rigs = rigs;
    this.each = readings / rigs;
    this.clients = clients;
  }

  public static void main(String[] args) throws Exception {
    int readings = args.length > 0 ? Integer.parseInt(args[0]) : 1_000_000;
    int rigs = args.length > 1 ? Integer.parseInt(args[1]) : 200;
    Path jar = Path.of(args.length > 2 ? args[2] : "target/limbspan.jar");
    String heap = args.length > 3 ? args[3] : "256m";
    int clients = args.length > 4 ? Integer.parseInt(args[4]) : 2;
    Path folder = Files.createTempDirectory("limbspan-intake");
    try (DatabaseServer server = new DatabaseServer(folder.resolve("server"))) {
      server.start();
      new IntakeBench(readings, rigs, clients).run(server, jar, folder.resolve("home"), heap);
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
  }

  private void run(DatabaseServer server, Path jar, Path home, String heap) throws Exception {
    List<String> files =
        IntStream.range(0, rigs + WARM_UPS)
            .mapToObj(rig -> TenYears.csv(site(rig), rig, each))
            .toList();
    try (ServiceProcess service =
            server.serviceOf(jar, home, List.of("-Xmx" + heap, "-XX:TieredStopAtLevel=4"));
        Connection connection = server.connect()) {
      service.start();
      describe(service.http());
      warmUp(service.http(), files);
      awaitJudged(connection);
      double intake = intake(service, files.subList(0, rigs));
      long behind = behind(connection);
      long began = System.nanoTime();
      awaitJudged(connection);
      System.out.printf(
          "%d of %d rigs were judged by then, all %.1f s later%n",
          rigs - behind, rigs, secondsSince(began));
      System.out.println("  " + Memory.of(service));
      double copy = copy(server, connection);
      System.out.printf(
          "%d readings of %d rigs, %d clients: service %.0f a second, COPY %.0f a second, ratio %.2f%n",
          rigs * each, rigs, clients, intake, copy, intake / copy);
    }
  }

  private static Site site(int rig) {
    return new Site((rig * 7) % 120 - 60.0, (rig * 11) % 360 - 180.0, 100);
  }

  private void describe(Http http) throws IOException, InterruptedException {
    for (int rig = 0; rig < rigs + WARM_UPS; rig++) {
      String description =
          """
          {"slug": "bench-%d", "name": "Invented rig %d", "latitudeDeg": %.1f, "longitudeDeg": %.1f,
           "elevationM": 100, "timeZone": "UTC"}"""
              .formatted(rig, rig, site(rig).latitudeDeg(), site(rig).longitudeDeg());
      require(http.post("/api/rigs", "application/json", description), 201);
    }
  }

  /** Rigs that are not counted. */
  private void warmUp(Http http, List<String> files) throws IOException, InterruptedException {
    for (int rig = rigs; rig < rigs + WARM_UPS; rig++) {
      require(http.post("/api/rigs/bench-" + rig + "/readings", "text/csv", files.get(rig)), 200);
    }
  }

  private double intake(ServiceProcess service, List<String> files) throws Exception {
    long began = System.nanoTime();
    for (int quarter = 0; quarter < QUARTERS; quarter++) {
      int from = rigs * quarter / QUARTERS;
      int to = rigs * (quarter + 1) / QUARTERS;
      byClients(
          clients,
          to - from,
          index -> {
            int rig = from + index;
            String path = "/api/rigs/bench-" + rig + "/readings";
            require(service.http().post(path, "text/csv", files.get(rig)), 200);
            return each;
          });
      System.out.printf(
          "%d taken in after %.1f s; %s%n", to * each, secondsSince(began), Memory.of(service));
    }
    return rigs * (double) each / secondsSince(began);
  }

  /** The same rows, rig by rig as they came, into the same table after it was emptied. */
  private double copy(DatabaseServer server, Connection connection) throws Exception {
    List<String> files = new ArrayList<>();
    for (int rig = 0; rig < rigs; rig++) {
      long id = count(connection, "select id from rig where slug = 'bench-" + rig + "'");
      StringWriter rows = new StringWriter();
      copies(connection)
          .copyOut(
              "copy (select * from reading where rig_id = %d order by taken_at) to stdout"
                  .formatted(id),
              rows);
      files.add(rows.toString());
    }
    try (Statement statement = connection.createStatement()) {
      statement.execute("truncate reading");
      statement.execute("checkpoint");
    }
    List<Connection> connections = new ArrayList<>();
    ThreadLocal<Connection> own =
        ThreadLocal.withInitial(
            () -> {
              Connection added = connect(server);
              synchronized (connections) {
                connections.add(added);
              }
              return added;
            });
    long began = System.nanoTime();
    long copied =
        byClients(
            clients,
            rigs,
            rig ->
                copies(own.get())
                    .copyIn("copy reading from stdin", new StringReader(files.get(rig))));
    double seconds = secondsSince(began);
    for (Connection each : connections) {
      each.close();
    }
    if (copied != (long) rigs * this.each) {
      throw new IllegalStateException("copied " + copied);
    }
    return copied / seconds;
  }

  private static Connection connect(DatabaseServer server) {
    try {
      return server.connect();
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static CopyManager copies(Connection connection) throws SQLException {
    return connection.unwrap(PGConnection.class).getCopyAPI();
  }
}
