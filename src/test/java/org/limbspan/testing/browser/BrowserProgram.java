package org.limbspan.testing.browser;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** Finds the browser that is installed on this machine. */
final class BrowserProgram {

  static final String PROPERTY = "limbspan.test.browser";
  static final String VARIABLE = "LIMBSPAN_TEST_BROWSER";

  private static final List<String> USUAL =
      List.of(
          "/usr/bin/chromium",
          "/usr/bin/chromium-browser",
          "/usr/bin/google-chrome-stable",
          "/Applications/Chromium.app/Contents/MacOS/Chromium",
          "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome");

  private BrowserProgram() {}

  /**
   * The one that is named, or the first of the usual places; a named one that is not there is an
   * error rather than a reason to step aside.
   */
  static Optional<Path> find() {
    Optional<Path> named =
        Stream.of(System.getProperty(PROPERTY), System.getenv(VARIABLE))
            .filter(Objects::nonNull)
            .map(Path::of)
            .findFirst();
    if (named.isPresent() && !Files.isExecutable(named.get())) {
      throw new IllegalStateException("no browser at " + named.get());
    }
    return named.or(() -> USUAL.stream().map(Path::of).filter(Files::isExecutable).findFirst());
  }
}
