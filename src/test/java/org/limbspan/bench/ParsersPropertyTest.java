package org.limbspan.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.limbspan.testing.fuzz.Mutator;
import org.limbspan.testing.fuzz.ParserTarget;

/** The first inputs of {@link ParserFuzzBench} for each parser. */
class ParsersPropertyTest {

  private static final int INPUTS = 2000;

  @TempDir Path folder;

  @Test
  void takeOrRefuseWhateverComes() {
    for (ParserTarget target : ParserFuzzBench.targets(folder)) {
      Mutator mutator = new Mutator(target.name().hashCode());
      int taken = 0;
      for (int i = 0; i < INPUTS; i++) {
        byte[] input = mutator.input(target);
        try {
          taken += target.takes(input) ? 1 : 0;
        } catch (Exception fault) {
          throw new AssertionError(target.name() + ": " + HexFormat.of().formatHex(input), fault);
        }
      }
      assertThat(taken).as(target.name()).isPositive();
    }
  }

  @Test
  void takeWhatTheInputsAreMadeOf() throws Exception {
    for (ParserTarget target : ParserFuzzBench.targets(folder)) {
      for (byte[] seed : target.seeds()) {
        assertThat(target.takes(seed.clone())).as(target.name()).isTrue();
      }
    }
  }
}
