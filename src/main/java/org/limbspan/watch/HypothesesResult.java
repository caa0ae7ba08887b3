package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The orbiting Moon and the near Moon before the same readings.
 *
 * @param log10BayesFactor positive where the readings support the orbiting Moon; absent while there
 *     is nothing to compare
 * @param remarks priors and assumptions, in words
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record HypothesesResult(
    List<Hypothesis> hypotheses, @Nullable Double log10BayesFactor, List<String> remarks) {

  public HypothesesResult {
    hypotheses = List.copyOf(hypotheses);
    remarks = List.copyOf(remarks);
  }

  /**
   * One hypothesis.
   *
   * @param name {@code orbiting-moon} or {@code near-moon}
   * @param logLikelihood natural logarithm, at the best of what the hypothesis leaves free
   * @param logEvidence natural logarithm, averaged over what it leaves free
   */
  public record Hypothesis(String name, double logLikelihood, double logEvidence) {}
}
