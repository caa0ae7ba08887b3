package org.limbspan.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** A main class in a process of its own, on this class path, whose output is kept. */
public final class ChildJvm implements AutoCloseable {

  private static final long LONGEST_WAIT_S = 300;

  private final Process process;
  private final List<String> lines = new CopyOnWriteArrayList<>();
  private final Thread reader;

  private ChildJvm(Process process) {
    this.process = process;
    this.reader = new Thread(this::read, "output of process " + process.pid());
    reader.setDaemon(true);
    reader.start();
  }

  public static ChildJvm run(String mainClass, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-XX:TieredStopAtLevel=1");
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add(mainClass);
    command.addAll(List.of(arguments));
    return new ChildJvm(new ProcessBuilder(command).redirectErrorStream(true).start());
  }

  public long pid() {
    return process.pid();
  }

  public List<String> lines() {
    return List.copyOf(lines);
  }

  /** Waits for a line of output. */
  public String await(Predicate<String> wanted) throws InterruptedException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_WAIT_S);
    int next = 0;
    while (System.nanoTime() < deadline) {
      for (; next < lines.size(); next++) {
        if (wanted.test(lines.get(next))) {
          return lines.get(next);
        }
      }
      if (!process.isAlive() && !reader.isAlive()) {
        break;
      }
      Thread.sleep(20);
    }
    throw new AssertionError("no such line; the output was\n" + String.join("\n", lines));
  }

  /** Asks it to end, as SIGTERM does, and returns its exit code. */
  public int stop() throws InterruptedException {
    process.toHandle().destroy(); // unlike destroy() of the process, this leaves its output open
    return exitCode();
  }

  /** Ends it at once, as SIGKILL does. */
  public void kill() throws InterruptedException {
    process.toHandle().destroyForcibly();
    exitCode();
  }

  public int exitCode() throws InterruptedException {
    if (!process.waitFor(LONGEST_WAIT_S, TimeUnit.SECONDS)) {
      throw new AssertionError("still running; the output was\n" + String.join("\n", lines));
    }
    reader.join();
    return process.exitValue();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }

  private void read() {
    try (BufferedReader output =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      output.lines().forEach(lines::add);
    } catch (IOException | UncheckedIOException ended) {
      lines.add("(output ended: " + ended.getMessage() + ")");
    }
  }
}
