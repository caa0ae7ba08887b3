package org.limbspan.bench.service;

import java.io.IOException;

/** Commands of the system. */
final class Shell {

  private Shell() {}

  static void run(String... command) throws IOException, InterruptedException {
    int code = new ProcessBuilder(command).inheritIO().start().waitFor();
    if (code != 0) {
      throw new IOException(String.join(" ", command) + " ended with " + code);
    }
  }

  static void runQuietly(String... command) {
    try {
      run(command);
    } catch (IOException e) {
      System.err.println(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
