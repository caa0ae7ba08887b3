package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.limbspan.scale.SharedError.Kind;
import org.limbspan.scale.SharedError.Source;

/** Sums of squares differ in their last bit by the order of the terms; a judgement must not. */
class TermTest {

  @Test
  void keepsTheOrderInWhichSourcesAreGiven() {
    List<Source> sources =
        IntStream.range(0, 8).mapToObj(i -> new Source(Kind.TARGET_LENGTH, 297 - i, 0.1)).toList();
    Map<Source, Double> given = new LinkedHashMap<>();
    sources.forEach(source -> given.put(source, 1e-3));

    assertThat(new Term(0, 1e-3, given).sources()).containsExactlyElementsOf(sources);
  }
}
