package org.limbspan.bench;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.Sizes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * How quickly a page of a running service is drawn, moved, and carried over the wire.
 *
 * <p>Arguments: the address of a page with a figure over time, such as that of the cycle; the
 * browser's program; how often, each time with an empty cache (5). One line a visit: time from the
 * request to the frame with the first figure; bytes over the wire; requests to other places; frames
 * a second while the whole is zoomed and while a part is panned, with the median and the 95th
 * percentile of the time between frames.
 */
public final class PageBench {

  private PageBench() {}

  public static void main(String[] args) {
    String address = args[0];
    int visits = args.length > 2 ? Integer.parseInt(args[2]) : 5;
    Map<String, String> noDownload = Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1");
    try (Playwright playwright =
        Playwright.create(new Playwright.CreateOptions().setEnv(noDownload))) {
      Browser browser =
          playwright
              .chromium()
              .launch(
                  new BrowserType.LaunchOptions()
                      .setExecutablePath(Path.of(args[1]))
                      .setArgs(List.of("--no-sandbox")));
      for (int visit = 0; visit < visits; visit++) {
        System.out.println(visit(browser, address));
      }
    }
  }

  private static String visit(Browser browser, String address) {
    try (BrowserContext context =
        browser.newContext(new Browser.NewContextOptions().setViewportSize(1280, 900))) {
      List<Response> answers = Collections.synchronizedList(new ArrayList<>());
      Page page = context.newPage();
      page.onResponse(answers::add);
      page.addInitScript(script("watch-first-plot.js"));
      page.navigate(address);
      page.waitForFunction("() => globalThis.firstPlotMs");
      page.waitForFunction(
          "() => [...document.querySelectorAll('figure')].every((f) => f.querySelector('canvas'))");
      double firstPlotMs = ((Number) page.evaluate("firstPlotMs")).doubleValue();
      List<Response> finished =
          List.copyOf(answers).stream().filter(answer -> !answer.url().endsWith("/live")).toList();
      long bytes = finished.stream().mapToLong(PageBench::bytes).sum();
      String origin = address.substring(0, address.indexOf('/', "http://".length()));
      long elsewhere = finished.stream().filter(a -> !a.url().startsWith(origin + "/")).count();
      return String.format(
          Locale.ROOT,
          "first plot %.0f ms; %d answers, %.0f kB, %d from elsewhere; %s; load %.1f",
          firstPlotMs,
          finished.size(),
          bytes / 1000.0,
          elsewhere,
          page.evaluate(script("move-figure.js")),
          ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }
  }

  private static long bytes(Response answer) {
    Sizes sizes = answer.request().sizes();
    return (long) sizes.responseBodySize + sizes.responseHeadersSize;
  }

  private static String script(String name) {
    try (var in = Objects.requireNonNull(PageBench.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
