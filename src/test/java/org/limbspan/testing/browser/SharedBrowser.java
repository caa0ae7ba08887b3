package org.limbspan.testing.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.util.Map;

/** One browser process for all tests of a JVM; each visit is a profile of its own in it. */
final class SharedBrowser implements AutoCloseable {

  private static final Map<String, String> NO_DOWNLOAD =
      Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1");

  private final Playwright playwright;
  private final Browser browser;

  SharedBrowser(Path program) {
    playwright = Playwright.create(new Playwright.CreateOptions().setEnv(NO_DOWNLOAD));
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
