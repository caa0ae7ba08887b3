package org.limbspan.bench.service;

import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/** What benches with a database beside the service have in common. */
final class Bench {

  /** Rigs whose judgement is behind their ledger. */
  private static final String BEHIND =
      """
      select count(*) from rig r
      left join judgement j on j.rig_id = r.id and j.revision = r.ledger_revision
      where j.rig_id is null and r.ledger_revision > 0
      """;

  private Bench() {}

  /** One piece of work. */
  interface Work {
    long run(int index) throws Exception;
  }

  /** Does the work of each index, by some clients beside each other; the sum of what they say. */
  static long byClients(int clients, int count, Work work) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(clients);
    try {
      IntFunction<Callable<Long>> task = index -> () -> work.run(index);
      List<Future<Long>> done =
          threads.invokeAll(IntStream.range(0, count).mapToObj(task).toList());
      long sum = 0;
      for (Future<Long> each : done) {
        sum += each.get();
      }
      return sum;
    } finally {
      threads.shutdownNow();
    }
  }

  /** How many rigs' judgements are behind their ledgers. */
  static long behind(Connection connection) throws SQLException {
    return count(connection, BEHIND);
  }

  static void awaitJudged(Connection connection) throws SQLException, InterruptedException {
    while (behind(connection) > 0) {
      Thread.sleep(200);
    }
  }

  /** The one whole number that a statement answers. */
  static long count(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      rows.next();
      return rows.getLong(1);
    }
  }

  static double secondsSince(long nanoTime) {
    return (System.nanoTime() - nanoTime) / 1e9;
  }

  static void require(Http.Reply reply, int status) throws IOException {
    if (reply.status() != status) {
      throw new IOException("answered " + reply.status() + " " + reply.body());
    }
  }
}
