package org.limbspan.testing;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A strict reader of the text format of OpenMetrics, version 1.0.0 (openmetrics.io, "Text format":
 * its ABNF, and the rules on metric families, suffixes and units beside it). It takes less than the
 * specification allows where the service has no need of it: no timestamps, no exemplars.
 */
public final class OpenMetricsText {

  private static final String NAME = "[a-zA-Z_:][a-zA-Z0-9_:]*";
  private static final String LABEL = "[a-zA-Z_][a-zA-Z0-9_]*=\"(?:[^\"\\\\\\n]|\\\\[\\\\\"n])*\"";
  private static final Pattern METADATA =
      Pattern.compile("# (TYPE|HELP|UNIT) (" + NAME + ")(?: (.*))?");
  private static final Pattern SAMPLE =
      Pattern.compile(
          "("
              + NAME
              + ")(\\{(?:"
              + LABEL
              + "(?:,"
              + LABEL
              + ")*)?})? "
              + "([+-]?(?:[0-9]+\\.?[0-9]*(?:[eE][+-]?[0-9]+)?|Inf)|NaN)");

  /** What may follow the name of the family, by its type; "" is the bare name. */
  private static final Map<String, Set<String>> SUFFIXES =
      Map.of(
          "counter", Set.of("_total", "_created"),
          "gauge", Set.of(""),
          "summary", Set.of("", "_count", "_sum", "_created"),
          "histogram", Set.of("_bucket", "_count", "_sum", "_created"),
          "info", Set.of("_info"),
          "stateset", Set.of(""),
          "unknown", Set.of(""));

  private final Map<String, Double> samples = new LinkedHashMap<>();
  private final Map<String, String> types = new HashMap<>();
  private final Set<String> told = new HashSet<>();
  private @Nullable String family;
  private boolean sampled;

  private OpenMetricsText() {}

  /**
   * The samples of an exposition by name and labels, as they are written.
   *
   * @throws AssertionError with the line that breaks a rule
   */
  public static Map<String, Double> read(String text) {
    if (!text.endsWith("\n# EOF\n")) {
      throw new AssertionError("does not end with # EOF and a line feed");
    }
    OpenMetricsText reader = new OpenMetricsText();
    List<String> lines = List.of(text.split("\n", -1));
    for (String line : lines.subList(0, lines.size() - 2)) {
      reader.take(line);
    }
    return reader.samples;
  }

  private void take(String line) {
    Matcher metadata = METADATA.matcher(line);
    if (metadata.matches()) {
      String value = metadata.group(3) == null ? "" : metadata.group(3);
      takeMetadata(line, metadata.group(1), metadata.group(2), value);
      return;
    }
    Matcher sample = SAMPLE.matcher(line);
    require(sample.matches(), line, "neither metadata nor a sample");
    String labels = sample.group(2) == null ? "" : sample.group(2);
    takeSample(line, sample.group(1), labels, number(sample.group(3)));
  }

  private void takeMetadata(String line, String kind, String name, String value) {
    if (!name.equals(family)) {
      require(told.stream().noneMatch(each -> each.endsWith(" " + name)), line, "interleaved");
      family = name;
      sampled = false;
    }
    require(!sampled, line, "metadata after samples");
    require(told.add(kind + " " + name), line, "told twice");
    if (kind.equals("TYPE")) {
      require(SUFFIXES.containsKey(value), line, "no type of metric");
      types.put(name, value);
    } else if (kind.equals("UNIT") && !value.isEmpty()) {
      require(name.endsWith("_" + value), line, "the unit does not end the name");
    }
  }

  private void takeSample(String line, String name, String labels, double value) {
    String of = family;
    require(of != null && name.startsWith(of), line, "a sample of no family");
    String type = types.get(of);
    require(type != null, line, "a sample without a TYPE");
    String suffix = name.substring(String.valueOf(of).length());
    require(
        SUFFIXES.getOrDefault(String.valueOf(type), Set.of()).contains(suffix),
        line,
        "no suffix of a " + type);
    if (suffix.equals("_total") || suffix.equals("_count") || suffix.equals("_bucket")) {
      require(value >= 0, line, "a count below 0");
    }
    sampled = true;
    require(samples.put(name + labels, value) == null, line, "a series told twice");
  }

  private static double number(String text) {
    return switch (text) {
      case "+Inf", "Inf" -> Double.POSITIVE_INFINITY;
      case "-Inf" -> Double.NEGATIVE_INFINITY;
      default -> Double.parseDouble(text);
    };
  }

  private static void require(boolean kept, String line, String breach) {
    if (!kept) {
      throw new AssertionError(breach + ": " + line);
    }
  }
}
