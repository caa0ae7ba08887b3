package org.limbspan.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.limbspan.platform.StartRefused;
import org.limbspan.testing.ChildJvm;
import org.springframework.beans.factory.config.BeanFactoryPostProcessor;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;

/** The embedded server through all that can befall a computer at home. */
class EmbeddedDatabaseIT {

  /** Shared, so that the programs are unpacked once; the space is there on purpose. */
  @TempDir private static Path directory;

  private final Path home = directory.resolve("a home");
  private final Path data = home.resolve("database");

  @Test
  void keepsItsDataOverAnOrderlyRestart() throws Exception {
    try (EmbeddedDatabase database = start()) {
      execute(database, "create table kept (number int)");
      execute(database, "insert into kept values (42)");
    }

    try (EmbeddedDatabase database = start()) {
      assertThat(query(database, "select number from kept")).isEqualTo("42");
    }
  }

  @Test
  void writesDurablyAndListensOnLoopbackOnly() throws Exception {
    try (EmbeddedDatabase database = start();
        Connection superuser =
            DriverManager.getConnection(
                database.getJdbcUrl(), Cluster.SUPERUSER, database.getPassword())) {
      assertThat(query(superuser, "show fsync")).isEqualTo("on");
      assertThat(query(superuser, "show full_page_writes")).isEqualTo("on");
      assertThat(query(superuser, "show synchronous_commit")).isEqualTo("on");
      assertThat(query(superuser, "show data_checksums")).isEqualTo("on");
      assertThat(query(superuser, "show listen_addresses")).isEqualTo("127.0.0.1");
      assertThat(query(superuser, "show unix_socket_directories")).isEmpty();
    }
  }

  @Test
  void refusesOtherUsersOfTheComputer() throws Exception {
    try (EmbeddedDatabase database = start()) {
      assertThatThrownBy(() -> DriverManager.getConnection(database.getJdbcUrl(), "limbspan", ""))
          .isInstanceOf(SQLException.class);
      assertThatThrownBy(
              () -> DriverManager.getConnection(database.getJdbcUrl(), "postgres", "postgres"))
          .isInstanceOf(SQLException.class);
      assertThat(query(database, "select rolsuper from pg_roles where rolname = current_user"))
          .isEqualTo("f");
    }
    assertThat(
            PosixFilePermissions.toString(
                Files.getPosixFilePermissions(data.resolve("limbspan.password"))))
        .isEqualTo("rw-------");
  }

  /** It starts while the service is put together, and not every service gets that far. */
  @Test
  void stopsWhatWasStartedForAServiceThatFailed() throws Exception {
    start().close();
    assertThatThrownBy(() -> service(Failing.class).close()).hasMessage("no service");
    assertThat(Postmaster.of(data)).isEmpty();

    try (AnnotationConfigApplicationContext service = service()) {
      assertThat(query(service.getBean(EmbeddedDatabase.class), "select 42")).isEqualTo("42");
    }
    assertThat(Postmaster.of(data)).isEmpty();
  }

  @Test
  void saysWhyAServiceCannotHaveItsDatabase() {
    try (EmbeddedDatabase database = start()) {
      assertThat(database.getUsername()).isEqualTo("limbspan");
      assertThatThrownBy(() -> service().close())
          .hasRootCauseInstanceOf(StartRefused.class)
          .rootCause()
          .hasMessageContaining(home.toString());
    }
  }

  private AnnotationConfigApplicationContext service(Class<?>... parts) {
    AnnotationConfigApplicationContext service = new AnnotationConfigApplicationContext();
    TestPropertyValues.of("limbspan.home=" + home).applyTo(service);
    service.register(DatabaseConfiguration.class);
    Stream.of(parts).forEach(service::register);
    service.refresh();
    return service;
  }

  static final class Failing implements BeanFactoryPostProcessor {

    @Override
    public void postProcessBeanFactory(ConfigurableListableBeanFactory beans) {
      throw new IllegalStateException("no service");
    }
  }

  @Test
  void refusesASecondServiceOnTheSameHome() throws Exception {
    try (ChildJvm first = writingService()) {
      first.await(line -> line.startsWith("committed"));

      assertThatThrownBy(this::start)
          .isInstanceOf(StartRefused.class)
          .hasMessageContaining(home.toString())
          .hasMessageContaining("process " + first.pid());

      int before = committed(first);
      first.await(line -> line.equals("committed " + (before + 10)));
      kill(first);
    }
  }

  @Test
  void holdsEverythingCommittedWhenServiceAndDatabaseAreKilled() throws Exception {
    int committed;
    try (ChildJvm service = writingService()) {
      service.await(line -> line.equals("committed 100"));
      kill(service);
      committed = committed(service);
    }

    try (EmbeddedDatabase database = start()) {
      assertThat(query(database, "select count(*) >= " + committed + " from written"))
          .isEqualTo("t");
      assertThat(query(database, "select max(number) = count(*) from written")).isEqualTo("t");
      execute(database, "drop table written");
    }
  }

  @Test
  void takesOverFromTheServerThatAKilledServiceLeftBehind() throws Exception {
    long leftBehind;
    int committed;
    try (ChildJvm service = writingService()) {
      service.await(line -> line.equals("committed 100"));
      service.kill();
      committed = committed(service);
      leftBehind = Postmaster.of(data).orElseThrow().pid();
      assertThat(ProcessHandle.of(leftBehind)).isPresent();
    }

    try (EmbeddedDatabase database = start()) {
      assertThat(Postmaster.of(data).orElseThrow().pid()).isNotEqualTo(leftBehind);
      assertThat(query(database, "select count(*) >= " + committed + " from written"))
          .isEqualTo("t");
      execute(database, "drop table written");
    }
  }

  /** Twice, since a server that the service started again is watched like the first. */
  @Test
  void startsTheServerAgainWheneverItIsKilled() throws Exception {
    try (EmbeddedDatabase database = start()) {
      for (int time = 0; time < 2; time++) {
        long killed = killServer();

        await()
            .atMost(60, TimeUnit.SECONDS)
            .ignoreExceptions()
            .untilAsserted(() -> assertThat(query(database, "select 1")).isEqualTo("1"));
        assertThat(Postmaster.of(data).orElseThrow().pid()).isNotEqualTo(killed);
      }
    }
  }

  @Test
  void sparesAStrangerUnderTheProcessNumberOfTheLastServer() throws Exception {
    start().close();
    Process stranger = new ProcessBuilder("sleep", "60").start();
    try {
      Files.writeString(
          data.resolve("postmaster.pid"),
          stranger.pid() + "\n" + data + "\n1700000000\n5432\n\n127.0.0.1\n  0  0\nready   \n");

      try (EmbeddedDatabase database = start()) {
        assertThat(query(database, "select 1")).isEqualTo("1");
      }
      assertThat(stranger.isAlive()).isTrue();
    } finally {
      stranger.destroyForcibly();
    }
  }

  @Test
  void repairsAFirstStartThatWasCutShort() throws Exception {
    Path other = directory.resolve("cut short");
    try (ChildJvm service = ChildJvm.run(WritingService.class.getName(), other.toString())) {
      await()
          .atMost(60, TimeUnit.SECONDS)
          .pollInterval(5, TimeUnit.MILLISECONDS)
          .ignoreExceptions()
          .until(() -> unfinishedVersionFile(other).isPresent());
      service.kill();
    }
    assertThat(other.resolve("database")).doesNotExist();

    try (EmbeddedDatabase database = EmbeddedDatabase.start(other.toString())) {
      assertThat(query(database, "select 1")).isEqualTo("1");
    }
    await()
        .atMost(60, TimeUnit.SECONDS)
        .untilAsserted(
            () -> {
              EmbeddedDatabase.start(other.toString()).close();
              assertThat(other).isDirectoryNotContaining("glob:**/unfinished-*");
            });
  }

  @Test
  void refusesDataOfAnotherMajorVersionAndLeavesItAlone() throws Exception {
    Path other = directory.resolve("older");
    Files.createDirectories(other.resolve("database"));
    Files.writeString(other.resolve("database/PG_VERSION"), "17\n");

    assertThatThrownBy(() -> EmbeddedDatabase.start(other.toString()))
        .isInstanceOf(StartRefused.class)
        .hasMessageContaining("holds data of PostgreSQL 17")
        .hasMessageContaining("brings 18");

    assertThat(other.resolve("database")).isDirectoryNotContaining("glob:**/limbspan*");
  }

  @Test
  void refusesAHomeThatCannotBeWritten() throws Exception {
    Path file = Files.writeString(directory.resolve("a file"), "");

    assertThatThrownBy(() -> EmbeddedDatabase.start(file.resolve("home").toString()))
        .isInstanceOf(StartRefused.class)
        .hasMessageContaining("cannot be written")
        .hasMessageContaining(file.toString());
  }

  private EmbeddedDatabase start() {
    return EmbeddedDatabase.start(home.toString());
  }

  private ChildJvm writingService() throws Exception {
    return ChildJvm.run(WritingService.class.getName(), home.toString());
  }

  private static int committed(ChildJvm service) {
    List<String> numbers =
        service.lines().stream().filter(line -> line.matches("committed \\d+")).toList();
    return Integer.parseInt(numbers.get(numbers.size() - 1).substring("committed ".length()));
  }

  private void kill(ChildJvm service) throws Exception {
    service.kill();
    killServer();
  }

  private long killServer() throws Exception {
    long pid = Postmaster.of(data).orElseThrow().pid();
    ProcessHandle.of(pid).orElseThrow().destroyForcibly();
    return pid;
  }

  private static Optional<Path> unfinishedVersionFile(Path home) throws Exception {
    try (var files = Files.walk(home, 2)) {
      return files.filter(file -> file.endsWith("PG_VERSION")).findFirst();
    }
  }

  private static void execute(EmbeddedDatabase database, String sql) throws SQLException {
    try (Connection connection = connect(database);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private static String query(EmbeddedDatabase database, String sql) throws SQLException {
    try (Connection connection = connect(database)) {
      return query(connection, sql);
    }
  }

  private static String query(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet result = statement.executeQuery(sql)) {
      result.next();
      return result.getString(1);
    }
  }

  private static Connection connect(EmbeddedDatabase database) throws SQLException {
    return DriverManager.getConnection(
        database.getJdbcUrl(), database.getUsername(), database.getPassword());
  }
}
