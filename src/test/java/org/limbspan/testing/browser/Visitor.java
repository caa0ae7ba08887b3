package org.limbspan.testing.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * Somebody with a browser before the service.
 *
 * <p>When the test is over, it fails if a page had an error in its script, broke its own security
 * policy, or asked for anything outside the service.
 */
public final class Visitor {

  private static final double PATIENCE_MS = 20_000;

  private final Browser browser;
  private final String address;
  private final List<BrowserContext> contexts = new ArrayList<>();
  private final List<String> complaints = new CopyOnWriteArrayList<>();

  Visitor(Browser browser, String address) {
    this.browser = browser;
    this.address = address;
  }

  /** Scheme, host and port of the service. */
  public String address() {
    return address;
  }

  /** An empty page of a new profile: no cookie, nothing kept, the device's own light. */
  public Page page(Screen screen) {
    BrowserContext context = browser.newContext(screen.options().setBaseURL(address));
    context.setDefaultTimeout(PATIENCE_MS);
    context.onPage(this::watch);
    context.onRequest(request -> watchAddress(request.url()));
    contexts.add(context);
    return context.newPage();
  }

  /** The same with one of the page's lights chosen: day, night or darkest. */
  public Page page(Screen screen, String light) {
    Page page = page(screen);
    page.context().addCookies(List.of(new Cookie("light", light).setUrl(address)));
    return page;
  }

  void leave() {
    contexts.forEach(BrowserContext::close);
    assertThat(complaints).as("what the browser complained of").isEmpty();
  }

  private void watch(Page page) {
    page.onPageError(error -> complaints.add(page.url() + ": " + error));
    page.onConsoleMessage(this::watchConsole);
  }

  private void watchConsole(ConsoleMessage message) {
    if (message.text().contains("Content Security Policy")) {
      complaints.add(message.location() + ": " + message.text());
    }
  }

  private void watchAddress(String url) {
    String scheme = URI.create(url).getScheme();
    boolean inside =
        url.startsWith(address + "/") || scheme.equals("blob") || scheme.equals("data");
    if (!inside) {
      complaints.add("asked outside the service: " + url);
    }
  }
}
