package org.limbspan.testing.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * A parser under bad input.
 *
 * @param share how often it is tried, against the other parsers
 * @param seeds inputs that it takes
 * @param words pieces that mean something to it
 * @param parser reads an input to its end, or throws one of {@code declared}; anything else is a
 *     fault
 */
public record ParserTarget(
    String name,
    int share,
    List<byte[]> seeds,
    List<String> words,
    Parser parser,
    List<Class<? extends Exception>> declared) {

  public ParserTarget {
    seeds = List.copyOf(seeds);
    words = List.copyOf(words);
    declared = List.copyOf(declared);
  }

  /** Reads an input. */
  public interface Parser {
    void read(byte[] input) throws Exception;
  }

  /** Reads a text. */
  public interface TextParser {
    void read(String input) throws Exception;
  }

  /** A parser of short texts. */
  public static ParserTarget ofText(
      String name, int share, TextParser parser, List<String> seeds, String... words) {
    return new ParserTarget(
        name,
        share,
        seeds.stream().map(seed -> seed.getBytes(StandardCharsets.UTF_8)).toList(),
        Arrays.asList(words),
        input -> parser.read(new String(input, StandardCharsets.UTF_8)),
        List.of(org.limbspan.platform.Problem.class));
  }

  /**
   * Tries an input.
   *
   * @return whether it was taken; false if it was refused as declared
   * @throws Exception what was not declared
   */
  public boolean takes(byte[] input) throws Exception {
    try {
      parser.read(input);
      return true;
    } catch (Exception thrown) {
      if (declared.stream().anyMatch(each -> each.isInstance(thrown))) {
        return false;
      }
      throw thrown;
    }
  }
}
