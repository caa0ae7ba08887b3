package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The content security policy lets nothing run that is written into a page, nor from elsewhere. */
class TemplatesTest {

  private static final Path RESOURCES = Path.of("src/main/resources");
  private static final Pattern INLINE =
      Pattern.compile("<style|\\sstyle=|<script(?![^>]*src=)|\\son[a-z]+=|javascript:");
  private static final Pattern ELSEWHERE =
      Pattern.compile("(?:src|href|action)=\"(?:https?:)?//|@import|url\\(");
  private static final Pattern ASSET =
      Pattern.compile("@\\{(/(?:css|js|webjars)/[^}(]+|/[\\w-]+\\.svg)\\}");
  private static final Pattern BREAKABLE =
      Pattern.compile("\\bk\\s+=|\\bk(?:\\s|&nbsp;|&#160;)*=\\s+\\d");
  private static final Pattern IMPORT = Pattern.compile("from \"(\\.[^\"]+)\"");

  static Stream<Path> templates() throws IOException {
    return files(RESOURCES.resolve("templates"), ".html");
  }

  static Stream<Path> modules() throws IOException {
    return files(RESOURCES.resolve("static/js"), ".js");
  }

  static Stream<Path> sheets() throws IOException {
    return files(RESOURCES.resolve("static/css"), ".css");
  }

  @ParameterizedTest
  @MethodSource("templates")
  void runNothingInlineAndFetchNothingFromElsewhere(Path template) throws IOException {
    String text = Files.readString(template);
    assertThat(INLINE.matcher(text).results().map(MatchResult::group)).isEmpty();
    assertThat(ELSEWHERE.matcher(text).results().map(MatchResult::group)).isEmpty();
  }

  /** A coverage factor stays on one line. */
  @ParameterizedTest
  @MethodSource("templates")
  void breakNoCoverageFactor(Path template) throws IOException {
    String text = Files.readString(template);
    assertThat(BREAKABLE.matcher(text).results().map(MatchResult::group)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void drawNothingFromElsewhere(Path sheet) throws IOException {
    assertThat(ELSEWHERE.matcher(Files.readString(sheet)).results()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("templates")
  void nameOnlyAssetsThatAreThere(Path template) throws IOException {
    List<String> named = groups(ASSET, Files.readString(template));
    assertThat(named).allSatisfy(path -> assertThat(served(path)).as(path).isTrue());
  }

  @ParameterizedTest
  @MethodSource("modules")
  void importOnlyModulesThatAreThere(Path module) throws IOException {
    URI own = URI.create("/" + RESOURCES.resolve("static").relativize(module));
    List<String> named =
        groups(IMPORT, Files.readString(module)).stream()
            .map(path -> own.resolve(path).getPath())
            .toList();
    assertThat(named).allSatisfy(path -> assertThat(served(path)).as(path).isTrue());
  }

  private static Stream<Path> files(Path directory, String ending) throws IOException {
    try (Stream<Path> all = Files.walk(directory)) {
      return all.filter(path -> path.toString().endsWith(ending)).sorted().toList().stream();
    }
  }

  private static List<String> groups(Pattern pattern, String text) {
    return pattern.matcher(text).results().map(match -> match.group(1)).toList();
  }

  private static boolean served(String path) {
    return TemplatesTest.class.getResource("/static" + path) != null
        || TemplatesTest.class.getResource("/META-INF/resources" + path) != null;
  }
}
