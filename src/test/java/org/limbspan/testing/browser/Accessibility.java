package org.limbspan.testing.browser;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Page;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What axe-core finds on a page.
 *
 * <p>Source of the rules: axe-core 4.11, rules tagged WCAG 2.0 to 2.2, levels A and AA, and best
 * practice.
 */
public final class Accessibility {

  private static final Set<String> GRAVE = Set.of("serious", "critical");

  private Accessibility() {}

  /**
   * Serious and critical findings of all rules, one line each. The pages have no frames, so nothing
   * is carried over to a second page to be put together there.
   */
  public static List<String> graveFindings(Page page) {
    AxeRunOptions options = new AxeRunOptions();
    options.setResultTypes(List.of("violations"));
    return new AxeBuilder(page)
        .options(options).setLegacyMode(true).analyze().getViolations().stream()
            .filter(rule -> isGrave(rule.getImpact()))
            .map(Accessibility::words)
            .toList();
  }

  private static boolean isGrave(@Nullable String impact) {
    return impact != null && GRAVE.contains(impact);
  }

  private static String words(Rule rule) {
    return "%s: %s at %s"
        .formatted(
            rule.getId(),
            rule.getHelp(),
            rule.getNodes().stream().map(node -> node.getHtml()).toList());
  }
}
