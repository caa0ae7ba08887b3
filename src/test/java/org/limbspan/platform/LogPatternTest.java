package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.PatternLayout;
import ch.qos.logback.classic.spi.LoggingEvent;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;
import org.springframework.boot.env.YamlPropertySourceLoader;
import org.springframework.core.env.PropertySource;
import org.springframework.core.io.ClassPathResource;

/** The patterns of application.yaml, as the logging library reads them. */
class LogPatternTest {

  private static final String STAMP =
      "[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\\.[0-9]{3}\\S+ ";

  private final LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();

  @AfterEach
  void forgets() {
    MDC.clear();
  }

  @Test
  void writesOneLineForOneEvent() throws Exception {
    for (String kind : List.of("console", "file")) {
      String text = written(kind, "judged rig {}", null, 7);
      assertThat(text).matches("(?s)" + STAMP + " INFO .*: judged rig 7\n").hasLineCount(1);
    }
  }

  /** Line breaks as in the Unicode Standard, section 5.8 (newline guidelines). */
  @Test
  void beginsNoLineWithWhatAClientSent() throws Exception {
    for (String kind : List.of("console", "file")) {
      for (String lineBreak :
          List.of("\n", "\r\n", "\r", "\u000b", "\u000c", "\u0085", "\u2028", "\u2029")) {
        String sent = "a" + lineBreak + "2026-01-01T00:00:00.000Z ERROR forged";
        String text = written(kind, "value is {}", new IllegalStateException(sent), sent);
        assertThat(text).contains("forged");
        List<String> lines = text.lines().toList();
        assertThat(lines.get(0)).matches(STAMP + ".*");
        assertThat(lines.subList(1, lines.size())).isNotEmpty().allMatch(l -> l.startsWith("  | "));
      }
    }
  }

  @Test
  void showsControlCharactersHarmlessly() throws Exception {
    String text = written("file", "value is {}", null, "\u001b[2Jcleared\u0007\u009b31m\ttab");
    assertThat(text).endsWith("value is ?[2Jcleared??31m\ttab\n");
  }

  @Test
  void cutsKeysAndWordsOfGuestLinks() throws Exception {
    String secret = "limbspan-guest-0aB_-9";
    String text =
        written("file", "{}", new IllegalStateException(secret), "/guest/" + secret + "?a=b");
    assertThat(text)
        .doesNotContain("0aB_-9")
        .contains("/guest/limbspan-guest-...?a=b", "IllegalStateException: limbspan-guest-...");
    assertThat(written("file", "{}", null, "limbspan-rig-0aB_-9,")).contains("limbspan-rig-...,");
  }

  @Test
  void namesRequestRigAndJobWhereTheyAreKnown() throws Exception {
    assertThat(written("file", "x", null)).doesNotContain("[ ").contains("] org.limbspan.Some");
    MDC.put("request", "0123456789abcdef");
    MDC.put("rig", "garden");
    assertThat(written("file", "x", null)).contains("[ 0123456789abcdef garden] org.limbspan");
    MDC.put("job", "ledger-copies");
    MDC.remove("request");
    assertThat(written("file", "x", null)).contains("[ledger-copies garden] org.limbspan");
  }

  private String written(
      String kind, String message, @Nullable Throwable thrown, Object... arguments)
      throws IOException {
    PatternLayout layout = new PatternLayout();
    layout.setContext(context);
    layout.setPattern(pattern(kind));
    layout.start();
    return layout.doLayout(
        new LoggingEvent(
            "", context.getLogger("org.limbspan.Some"), Level.INFO, message, thrown, arguments));
  }

  private static String pattern(String kind) throws IOException {
    PropertySource<?> yaml =
        new YamlPropertySourceLoader()
            .load("application", new ClassPathResource("application.yaml"))
            .get(0);
    return String.valueOf(yaml.getProperty("logging.pattern." + kind))
        .replaceAll("%clr\\((%[^)]*|---)\\)(?:\\{[a-z]+})?", "$1");
  }
}
