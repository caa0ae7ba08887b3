package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The orbiting Moon and the near Moon before the same readings.
 *
 * @param log10BayesFactor positive where the readings support the orbiting Moon; absent while there
 *     is nothing to compare
 * @param sensitivity the same under other assumptions about the near Moon
 * @param remarks priors and assumptions, in words
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record HypothesesResult(
    List<Hypothesis> hypotheses,
    @Nullable Double log10BayesFactor,
    List<Sensitivity> sensitivity,
    List<String> remarks) {

  public HypothesesResult {
    hypotheses = List.copyOf(hypotheses);
    sensitivity = List.copyOf(sensitivity);
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

  /**
   * The factor under one set of assumptions about the near Moon.
   *
   * @param height {@code fixed} at 3000 statute miles, or {@code free} from 1000 to 20,000 km
   * @param monthlyChange {@code none}, or {@code free}: some power of the computed change
   */
  public record Sensitivity(String height, String monthlyChange, double log10BayesFactor) {}
}
