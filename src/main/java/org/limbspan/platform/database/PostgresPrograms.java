package org.limbspan.platform.database;

import io.zonky.test.db.postgres.embedded.DefaultPostgresBinaryResolver;
import io.zonky.test.db.postgres.util.ArchUtils;
import io.zonky.test.db.postgres.util.LinuxUtils;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.limbspan.platform.StartRefused;

/** The PostgreSQL programs that come with the service, unpacked into the home. */
final class PostgresPrograms {

  private static final String OWN_SERVER =
      "Run a PostgreSQL server of your own and name it with"
          + " --spring.datasource.url=jdbc:postgresql://HOST/DATABASE.";

  private final Path directory;
  private final List<String> prefix;

  private PostgresPrograms(Path directory, List<String> prefix) {
    this.directory = directory;
    this.prefix = prefix;
  }

  static PostgresPrograms in(Home home) {
    String system = system();
    try (InputStream archive = binaries(system)) {
      Path directory = ProgramArchive.unpack(archive, home.resolve("postgresql"));
      return new PostgresPrograms(directory, prefix(system));
    } catch (IOException e) {
      throw new UncheckedIOException("the PostgreSQL programs could not be unpacked", e);
    }
  }

  /** The major version, as it stands in the file {@code PG_VERSION} of a data directory. */
  String majorVersion() {
    String told = run("postgres", "-V");
    return told.replaceAll("(?s).*\\) (\\d+).*", "$1");
  }

  /**
   * Runs one program to its end and returns what it printed.
   *
   * @throws ProgramFailed if it ended with another exit code than 0
   */
  String run(String program, String... arguments) {
    List<String> command = new ArrayList<>(prefix);
    command.add(directory.resolve("bin").resolve(program).toString());
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().keySet().removeIf(name -> name.startsWith("PG"));
    builder.environment().put("LC_ALL", "C");
    try {
      Process process = builder.start();
      process.getOutputStream().close();
      String output =
          new String(process.getInputStream().readAllBytes(), Charset.defaultCharset()).strip();
      int code = process.waitFor();
      if (output.contains("cannot be run as root")) {
        throw new StartRefused(
            "PostgreSQL does not run as root, and no user namespace can be had here.",
            "Start the service as an ordinary user. " + OWN_SERVER);
      }
      if (code != 0) {
        throw new ProgramFailed(program, code, output);
      }
      return output;
    } catch (IOException e) {
      throw new StartRefused(
          "PostgreSQL's " + program + " does not run on this system: " + e.getMessage(),
          OWN_SERVER,
          e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new ProgramFailed(program, -1, "interrupted");
    }
  }

  private static InputStream binaries(String system) throws IOException {
    String machine = ArchUtils.normalize(System.getProperty("os.arch"));
    try {
      return DefaultPostgresBinaryResolver.INSTANCE.getPgBinary(system, machine);
    } catch (IllegalStateException e) {
      throw new StartRefused(
          "No PostgreSQL comes along for " + system + " on " + machine + ".", OWN_SERVER, e);
    }
  }

  private static String system() {
    String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      return "Windows";
    }
    return name.startsWith("mac") ? "Darwin" : "Linux";
  }

  /** PostgreSQL refuses to run as root; in a user namespace of its own it is nobody. */
  private static List<String> prefix(String system) {
    return system.equals("Linux") && LinuxUtils.isUnshareAvailable()
        ? List.of("unshare", "-U")
        : List.of();
  }
}
