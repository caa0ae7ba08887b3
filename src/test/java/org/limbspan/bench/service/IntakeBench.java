package org.limbspan.bench.service;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.postgresql.PGConnection;
import org.springframework.util.FileSystemUtils;

/**
 * CSV readings into the service, beside PostgreSQL's own COPY of the same rows into the same table
 * of another database of the same server. Arguments: readings (1000000), rigs (200), jar
 * (target/limbspan.jar), heap (256m), clients (2).
 */
public final class IntakeBench {

  private static final Instant FIRST = Instant.parse("2005-01-01T00:00:00Z");
  private static final Duration STEP = Duration.ofMinutes(350);
  private static final String HEADER =
      "taken_at,axis,diameter_arcmin,uncertainty_arcmin,exposure_s,iso,f_number\n";

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
    try (ServiceProcess service =
        server.serviceOf(jar, home, List.of("-Xmx" + heap, "-Xlog:gc:file=" + home + "-gc.log"))) {
      service.start();
      try (Connection connection = server.connect()) {
        describe(service.http());
        warmUp(service.http());
        double intake = intake(service);
        System.out.println("  " + Memory.of(service));
        long pending = System.nanoTime();
        awaitJudged(connection);
        System.out.printf(
            "all judged %.1f s after the last answer%n", (System.nanoTime() - pending) / 1e9);
        double copy = copy(connection);
        System.out.printf(
            "%d readings of %d rigs: service %.0f a second, COPY %.0f a second, ratio %.2f%n",
            rigs * each, rigs, intake, copy, intake / copy);
      }
    }
  }

  private void describe(Http http) throws IOException, InterruptedException {
    for (int rig = 0; rig <= rigs; rig++) {
      Http.Reply reply =
          http.post(
              "/api/rigs",
              "application/json",
              """
              {"slug": "bench-%d", "name": "Invented rig %d", "latitudeDeg": %.1f, "longitudeDeg": %.1f,
               "elevationM": 100, "timeZone": "UTC"}"""
                  .formatted(rig, rig, (rig * 7) % 120 - 60.0, (rig * 11) % 360 - 180.0));
      require(reply, 201);
    }
  }

  /** Into a rig that is not counted. */
  private void warmUp(Http http) throws IOException, InterruptedException {
    for (int i = 0; i < 10; i++) {
      require(
          http.post("/api/rigs/bench-" + rigs + "/readings", "text/csv", csv(rigs, i * 2000, 2000)),
          200);
    }
  }

  private double intake(ServiceProcess service) throws Exception {
    AtomicInteger next = new AtomicInteger();
    List<Throwable> failures = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    long began = System.nanoTime();
    for (int i = 0; i < clients; i++) {
      Thread thread =
          new Thread(
              () -> {
                try {
                  for (int rig = next.getAndIncrement(); rig < rigs; rig = next.getAndIncrement()) {
                    require(
                        service
                            .http()
                            .post(
                                "/api/rigs/bench-" + rig + "/readings",
                                "text/csv",
                                csv(rig, 0, each)),
                        200);
                  }
                } catch (IOException | InterruptedException | RuntimeException e) {
                  synchronized (failures) {
                    failures.add(e);
                  }
                }
              },
              "client " + i);
      threads.add(thread);
      thread.start();
    }
    for (Thread thread : threads) {
      thread.join();
    }
    double seconds = (System.nanoTime() - began) / 1e9;
    if (!failures.isEmpty()) {
      throw new IllegalStateException(failures.get(0));
    }
    System.out.printf("intake took %.1f s%n", seconds);
    return rigs * (double) each / seconds;
  }

  private static void awaitJudged(Connection connection) throws SQLException, InterruptedException {
    while (count(
            connection,
            "select count(*) from rig r left join judgement j on j.rig_id = r.id and j.revision = r.ledger_revision where j.rig_id is null and r.ledger_revision > 0")
        > 0) {
      Thread.sleep(200);
    }
  }

  /** The same rows, rig by rig as they came, into the same table after it was emptied. */
  private double copy(Connection connection) throws SQLException, IOException {
    List<String> files = new ArrayList<>();
    try (Statement statement = connection.createStatement()) {
      for (int rig = 0; rig < rigs; rig++) {
        long id = count(connection, "select id from rig where slug = 'bench-" + rig + "'");
        java.io.StringWriter rows = new java.io.StringWriter();
        connection
            .unwrap(PGConnection.class)
            .getCopyAPI()
            .copyOut(
                "copy (select * from reading where rig_id = "
                    + id
                    + " order by taken_at) to stdout",
                rows);
        files.add(rows.toString());
      }
      statement.execute("truncate reading");
      statement.execute("checkpoint");
    }
    long began = System.nanoTime();
    long copied = 0;
    for (String rows : files) {
      copied +=
          connection
              .unwrap(PGConnection.class)
              .getCopyAPI()
              .copyIn("copy reading from stdin", new StringReader(rows));
    }
    double seconds = (System.nanoTime() - began) / 1e9;
    System.out.printf("COPY of %d rows took %.1f s%n", copied, seconds);
    return copied / seconds;
  }

  private static long count(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      rows.next();
      return rows.getLong(1);
    }
  }

  /** Invented angles; the service computes the Moon beside each. */
  private static String csv(int rig, int from, int count) {
    StringBuilder csv = new StringBuilder(HEADER);
    for (int i = from; i < from + count; i++) {
      csv.append(FIRST.plus(STEP.multipliedBy(i)).plusSeconds(rig))
          .append(",horizontal,")
          .append(30 + (i % 300) / 100.0)
          .append(",0.04,0.004,100,11\n");
    }
    return csv.toString();
  }

  private static void require(Http.Reply reply, int status) throws IOException {
    if (reply.status() != status) {
      throw new IOException("answered " + reply.status() + " " + reply.body());
    }
  }
}
