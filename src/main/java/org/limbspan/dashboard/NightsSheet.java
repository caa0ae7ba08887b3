package org.limbspan.dashboard;

import java.util.List;

/** The page of the night ratios, in words ready to print. */
record NightsSheet(
    List<Line> latest,
    long earlier,
    List<String> verdict,
    List<Hypothesis> hypotheses,
    List<Sensitivity> sensitivity,
    List<String> remarks,
    List<Latitude> latitudes) {

  /** One night pair. */
  record Line(
      String culmination,
      String low,
      String high,
      String readings,
      String observed,
      String computed,
      String near,
      String verdict) {}

  /**
   * @param likelihood its logarithm to base 10 at the best of what the hypothesis leaves free
   */
  record Hypothesis(String name, String says, String likelihood) {}

  record Sensitivity(String height, String monthlyChange, String factor) {}

  /** The ratio by latitude, the Moon over the equator. */
  record Latitude(String latitude, String near, String orbiting, String rule, boolean own) {}
}
