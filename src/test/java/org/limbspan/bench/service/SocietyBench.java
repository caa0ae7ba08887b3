package org.limbspan.bench.service;

import static org.limbspan.bench.service.Bench.awaitJudged;
import static org.limbspan.bench.service.Bench.behind;
import static org.limbspan.bench.service.Bench.byClients;
import static org.limbspan.bench.service.Bench.count;
import static org.limbspan.bench.service.Bench.require;
import static org.limbspan.bench.service.Bench.secondsSince;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.limbspan.sky.Site;
import org.springframework.util.FileSystemUtils;

/**
 * A society of observers: many invented rigs of ten years on one server. A few are taken in and
 * judged by the service; the others are copies of them within the database, judgements included.
 * Then the first page of rigs taken at random, cold and again; one reading after the other at a
 * fixed pace, each timed from when it was due, alone and with pages meanwhile; the plans of the
 * statements behind both; and what a reading costs on disk.
 *
 * <p>Arguments: rigs (2000), readings of each (10000), jar (target/limbspan.jar), heap (512m),
 * seconds of intake (60), readings a second (100).
 */
public final class SocietyBench {

  private static final int ORIGINALS = 10;
  private static final int CLIENTS = 2;
  private static final int VISITS = 60;
  private static final int WARM_UP_SECONDS = 90;

  private static final List<String> COPY_RIG =
      List.of(
          """
          insert into rig (slug, name, latitude_deg, longitude_deg, elevation_m, time_zone, note,
            ledger_revision, created_at)
          select slug || '-%1$d', name, latitude_deg, longitude_deg, elevation_m, time_zone, note,
            ledger_revision, created_at
          from rig where slug ~ '^society-[0-9]+$'
          """,
          """
          insert into setup (rig_id, started_at, version, note, entered_at)
          select copy.id, s.started_at, s.version, s.note, s.entered_at
          from rig copy
          join rig original on copy.slug = original.slug || '-%1$d'
          join setup s on s.rig_id = original.id
          """,
          """
          insert into reading (rig_id, taken_at, axis, version, standing, diameter, uncertainty,
            unit, entered_at)
          select copy.id, r.taken_at, r.axis, r.version, r.standing, r.diameter, r.uncertainty,
            r.unit, r.entered_at
          from rig copy
          join rig original on copy.slug = original.slug || '-%1$d'
          join reading r on r.rig_id = original.id
          order by copy.id, r.taken_at
          """,
          """
          insert into judgement (rig_id, revision, method, judged_at, document)
          select copy.id, j.revision, j.method, j.judged_at, j.document
          from rig copy
          join rig original on copy.slug = original.slug || '-%1$d'
          join judgement j on j.rig_id = original.id
          """,
          """
          insert into judgement_nights (rig_id, number, document)
          select copy.id, n.number, n.document
          from rig copy
          join rig original on copy.slug = original.slug || '-%1$d'
          join judgement_nights n on n.rig_id = original.id
          """);

  private static final List<String> SIZES =
      List.of(
          """
          select 'rows of readings', count(*) from reading
          """,
          """
          select 'partitions', count(*) from pg_inherits where inhparent = 'reading'::regclass
          """,
          """
          select 'bytes of a reading, row', round(sum(pg_table_size(inhrelid))
            / (select count(*) from reading), 1)
          from pg_inherits where inhparent = 'reading'::regclass
          """,
          """
          select 'bytes of a reading, index ' || substr(c.relname, 14), round(
            sum(pg_relation_size(c.oid)) / (select count(*) from reading), 1)
          from pg_inherits h join pg_index i on i.indrelid = h.inhrelid
          join pg_class c on c.oid = i.indexrelid
          where inhparent = 'reading'::regclass group by 1
          """,
          """
          select 'bytes of a judgement', (pg_total_relation_size('judgement')
            + pg_total_relation_size('judgement_nights')) / (select count(*) from judgement)
          """,
          """
          select 'MB of the database', pg_database_size(current_database()) / 1048576
          """);

  /** As the service asks, with a rig and the middle of its readings. */
  private static final List<String> STATEMENTS =
      List.of(
          """
          -- the latest reading of a rig
          select taken_at from (
            select distinct on (taken_at, axis) taken_at, axis, standing from reading
            where rig_id = %1$d order by taken_at desc, axis desc, version desc) latest
          where standing = 'held' order by taken_at desc, axis desc limit 1
          """,
          """
          -- a page of 100 readings
          select * from (
            select *, lead(version) over (partition by taken_at, axis order by version) as later
            from reading
            where rig_id = %1$d and taken_at >= timestamptz '%2$s' and taken_at < '2100-01-01'
              and (taken_at, axis) > (timestamptz '%2$s', '')) latest
          where later is null and standing = 'held' order by taken_at, axis limit 100
          """,
          """
          -- what is held under the key of one new reading
          select r.* from reading r
          join unnest(array[timestamptz '%2$s'], array['horizontal']) as k(taken_at, axis)
            on r.taken_at = k.taken_at and r.axis = k.axis
          where r.rig_id = %1$d and r.taken_at between '%2$s' and '%2$s'
          order by r.taken_at, r.axis, r.version
          """,
          """
          -- a reading by its id
          select * from reading where rig_id = %1$d and id = (
            select id from reading where rig_id = %1$d and taken_at >= '%2$s'
            order by taken_at limit 1)
          """);

  private final int rigs;
  private final int each;
  private final SplittableRandom random = new SplittableRandom(2000);
  private Instant next = Instant.now().minus(Duration.ofDays(3));

  private SocietyBench(int rigs, int each) {
    this.rigs = rigs;
    this.each = each;
  }

  public static void main(String[] args) throws Exception {
    int rigs = args.length > 0 ? Integer.parseInt(args[0]) : 2000;
    int each = args.length > 1 ? Integer.parseInt(args[1]) : 10_000;
    Path jar = Path.of(args.length > 2 ? args[2] : "target/limbspan.jar");
    String heap = args.length > 3 ? args[3] : "512m";
    int seconds = args.length > 4 ? Integer.parseInt(args[4]) : 60;
    int pace = args.length > 5 ? Integer.parseInt(args[5]) : 100;
    Path folder = Files.createTempDirectory("limbspan-society");
    try (DatabaseServer server = new DatabaseServer(folder.resolve("server"))) {
      server.start();
      SocietyBench bench = new SocietyBench(rigs, each);
      List<String> options = List.of("-Xmx" + heap, "-XX:TieredStopAtLevel=4");
      try (ServiceProcess service = server.serviceOf(jar, folder.resolve("home-0"), options)) {
        service.start();
        bench.takeInOriginals(service.http(), server);
      }
      bench.copy(server);
      try (ServiceProcess service = server.serviceOf(jar, folder.resolve("home-1"), options)) {
        long began = System.nanoTime();
        service.start();
        System.out.printf("start to health 200: %.1f s%n", secondsSince(began));
        bench.visit(service, "first page, cold");
        bench.visit(service, "first page, other rigs");
        bench.compare(server, service);
        System.out.println("warming up");
        bench.intake(server, service, WARM_UP_SECONDS, pace, true);
        System.out.println("readings alone");
        bench.intake(server, service, seconds, pace, false);
        System.out.println("readings, and two pages a second");
        bench.intake(server, service, seconds, pace, true);
        System.out.println(Memory.of(service));
        try (Connection connection = server.connect()) {
          System.out.printf("rigs behind with judging: %d%n", behind(connection));
          bench.explain(connection);
        }
      }
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
  }

  private void takeInOriginals(Http http, DatabaseServer server) throws Exception {
    long began = System.nanoTime();
    byClients(
        CLIENTS,
        ORIGINALS,
        number -> {
          Site site = new Site(number * 12 - 55.0, number * 33 - 170.0, 100);
          require(
              http.post(
                  "/api/rigs",
                  "application/json",
                  """
                  {"slug": "society-%d", "name": "Invented rig %d", "latitudeDeg": %.1f,
                   "longitudeDeg": %.1f, "elevationM": 100, "timeZone": "UTC"}"""
                      .formatted(number, number, site.latitudeDeg(), site.longitudeDeg())),
              201);
          require(
              http.post(
                  "/api/rigs/society-" + number + "/readings",
                  "text/csv",
                  TenYears.csv(site, number, each)),
              200);
          return each;
        });
    try (Connection connection = server.connect()) {
      awaitJudged(connection);
    }
    System.out.printf("%d rigs taken in and judged in %.1f s%n", ORIGINALS, secondsSince(began));
  }

  private void copy(DatabaseServer server) throws Exception {
    long began = System.nanoTime();
    byClients(
        CLIENTS,
        rigs / ORIGINALS - 1,
        number -> {
          try (Connection connection = server.connect();
              Statement statement = connection.createStatement()) {
            for (String sql : COPY_RIG) {
              statement.execute(sql.formatted(number));
            }
          }
          return 1;
        });
    try (Connection connection = server.connect();
        Statement statement = connection.createStatement()) {
      statement.execute("vacuum analyze");
      statement.execute("checkpoint");
      System.out.printf("copied in %.1f s%n", secondsSince(began));
      for (String sql : SIZES) {
        try (ResultSet rows = statement.executeQuery(sql)) {
          while (rows.next()) {
            System.out.printf("%12s %s%n", rows.getString(2), rows.getString(1));
          }
        }
      }
    }
  }

  private void visit(ServiceProcess service, String what) throws InterruptedException, IOException {
    double[] millis = new double[VISITS];
    for (int i = 0; i < VISITS; i++) {
      millis[i] = visit(service.http());
    }
    tell(what, millis);
  }

  private double visit(Http http) throws InterruptedException, IOException {
    String slug = slug();
    long began = System.nanoTime();
    require(http.get("/rigs/" + slug), 200);
    return 1000 * secondsSince(began);
  }

  /** What the service adds to the bare statement: a page of 100 readings, and the cycle judged. */
  private void compare(DatabaseServer server, ServiceProcess service) throws Exception {
    double[] page = new double[VISITS];
    double[] barePage = new double[VISITS];
    double[] cycle = new double[VISITS];
    double[] bareCycle = new double[VISITS];
    try (Connection connection = server.connect();
        Statement statement = connection.createStatement()) {
      statement.execute("set random_page_cost = 1.1");
      for (int i = 0; i < VISITS; i++) {
        String slug = slug();
        long rig = count(connection, "select id from rig where slug = '" + slug + "'");
        page[i] = millis(service, "/api/rigs/" + slug + "/readings?limit=100");
        barePage[i] = millis(statement, STATEMENTS.get(1).formatted(rig, "2014-01-01"));
        cycle[i] = millis(service, "/api/rigs/" + slug + "/cycle");
        bareCycle[i] =
            millis(statement, "select document->'cycle' from judgement where rig_id = " + rig);
      }
    }
    tell("100 readings over HTTP, predictions beside them", page);
    tell("the same 100 by bare SQL", barePage);
    tell("the cycle as judged over HTTP", cycle);
    tell("the same document by bare SQL", bareCycle);
  }

  private static double millis(ServiceProcess service, String path) throws Exception {
    long began = System.nanoTime();
    require(service.http().get(path), 200);
    return 1000 * secondsSince(began);
  }

  private static double millis(Statement statement, String sql) throws SQLException {
    long began = System.nanoTime();
    try (ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        rows.getString(1);
      }
    }
    return 1000 * secondsSince(began);
  }

  /** At a fixed pace, whether the one before was answered or not. */
  private void intake(
      DatabaseServer server, ServiceProcess service, int seconds, int pace, boolean withPages)
      throws Exception {
    ScheduledExecutorService clients = Executors.newScheduledThreadPool(8);
    double[] before = processorSeconds(service, server);
    try {
      List<Future<Double>> answers = new ArrayList<>();
      long began = System.nanoTime();
      for (int i = 0; i < seconds * pace; i++) {
        long due = i * TimeUnit.SECONDS.toNanos(1) / pace;
        String path = "/api/rigs/" + slug() + "/readings";
        next = next.plusMillis(37);
        String body =
            """
            [{"takenAt": "%s", "axis": "horizontal", "diameterArcmin": 31.1,
              "uncertaintyArcmin": 0.031}]"""
                .formatted(next);
        answers.add(
            clients.schedule(
                () -> {
                  require(service.http().post(path, "application/json", body), 200);
                  return (System.nanoTime() - began - due) / 1e6;
                },
                began + due - System.nanoTime(),
                TimeUnit.NANOSECONDS));
      }
      List<Double> pages = new ArrayList<>();
      while (withPages && secondsSince(began) < seconds - 1) {
        pages.add(visit(service.http()));
        Thread.sleep(500);
      }
      double[] millis = new double[answers.size()];
      for (int i = 0; i < millis.length; i++) {
        millis[i] = answers.get(i).get();
      }
      int half = millis.length / 2;
      tell("one reading at " + pace + " a second, first half", Arrays.copyOf(millis, half));
      tell(
          "one reading at " + pace + " a second, second half",
          Arrays.copyOfRange(millis, half, millis.length));
      double[] after = processorSeconds(service, server);
      System.out.printf(
          "processor time over readings, pages and judging included: service %.1f ms,"
              + " database %.1f, client %.1f%n",
          1000 * (after[0] - before[0]) / millis.length,
          1000 * (after[1] - before[1]) / millis.length,
          1000 * (after[2] - before[2]) / millis.length);
      if (withPages) {
        tell("first page meanwhile", pages.stream().mapToDouble(Double::doubleValue).toArray());
      }
    } finally {
      clients.shutdownNow();
    }
  }

  /** Of the service, of the database, and of this. */
  private static double[] processorSeconds(ServiceProcess service, DatabaseServer server)
      throws IOException {
    ProcessHandle main = server.postmaster();
    List<Long> database =
        Stream.concat(Stream.of(main), main.descendants()).map(ProcessHandle::pid).toList();
    return new double[] {
      Memory.processorSeconds(List.of(service.pid())),
      Memory.processorSeconds(database),
      Memory.processorSeconds(List.of(ProcessHandle.current().pid()))
    };
  }

  private void explain(Connection connection) throws SQLException {
    long rig = count(connection, "select max(id) from rig");
    try (Statement statement = connection.createStatement()) {
      statement.execute("set random_page_cost = 1.1"); // as the service does
      String middle;
      try (ResultSet row =
          statement.executeQuery(
              "select taken_at from reading where rig_id = %d order by taken_at offset %d limit 1"
                  .formatted(rig, each / 2))) {
        row.next();
        middle = row.getString(1);
      }
      for (String sql : STATEMENTS) {
        System.out.println(sql.lines().findFirst().orElseThrow());
        try (ResultSet rows =
            statement.executeQuery(
                "explain (analyze, buffers, costs off) " + sql.formatted(rig, middle))) {
          while (rows.next()) {
            if (!rows.getString(1).contains("never executed")) {
              System.out.println("    " + rows.getString(1));
            }
          }
        }
      }
    }
  }

  private String slug() {
    int copy = random.nextInt(rigs / ORIGINALS);
    String original = "society-" + random.nextInt(ORIGINALS);
    return copy == 0 ? original : original + "-" + (copy - 1);
  }

  private static void tell(String what, double[] millis) {
    double[] sorted = millis.clone();
    Arrays.sort(sorted);
    System.out.printf(
        "%s: median %.1f ms, 95 %% below %.1f, longest %.1f (%d)%n",
        what,
        sorted[sorted.length / 2],
        sorted[(int) (0.95 * (sorted.length - 1))],
        sorted[sorted.length - 1],
        sorted.length);
  }
}
