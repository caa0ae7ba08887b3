package org.limbspan.testing.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.util.Map;

/** One browser process for all tests of a JVM; each visit is a profile of its own in it. */
final class SharedBrowser implements AutoCloseable {

  /** The second lets a profile without a network reach its service workers too. */
  private static final Map<String, String> DRIVER =
      Map.of(
          "PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD",
          "1",
          "PW_EXPERIMENTAL_SERVICE_WORKER_NETWORK_EVENTS",
          "1");

  private final Playwright playwright;
  private final Browser browser;

  SharedBrowser(Path program) {
    playwright = Playwright.create(new Playwright.CreateOptions().setEnv(DRIVER));
    browser =
        playwright
            .chromium()
            .launch(new BrowserType.LaunchOptions().setExecutablePath(program).setHeadless(true));
  }

  Browser browser() {
    return browser;
  }

  @Override
  public void close() {
    playwright.close();
  }
}
