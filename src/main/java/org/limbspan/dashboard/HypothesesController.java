package org.limbspan.dashboard;

import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.limbspan.cycle.LatitudeRatios;
import org.limbspan.cycle.NearMoon;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.ModelAndView;

/** What each hypothesis expects of a night, by latitude. */
@Controller
class HypothesesController {

  private static final List<Double> LATITUDES_DEG =
      Stream.of(
              80.0, 70.0, 60.0, 51.5, 50.0, 40.0, 36.5, 30.0, 20.0, 10.0, 0.0, -10.0, -20.0, -30.0,
              -33.9, -40.0, -50.0, -60.0, -70.0, -80.0)
          .sorted(Collections.reverseOrder())
          .toList();

  /**
   * @param growth of the orbiting Moon's disc, percent
   */
  record Line(String latitude, String near, String orbiting, String growth, String rule) {}

  @GetMapping("/hypotheses")
  ModelAndView hypotheses() {
    ModelAndView page = new ModelAndView("hypotheses");
    page.addObject("bands", RatioBand.all());
    page.addObject("lines", LATITUDES_DEG.stream().map(HypothesesController::line).toList());
    return page;
  }

  private static Line line(double latitudeDeg) {
    LatitudeRatios ratios = LatitudeRatios.at(latitudeDeg, NearMoon.HEIGHT_KM);
    return new Line(
        Typeset.places(latitudeDeg, 1) + "\u00b0",
        Typeset.places(ratios.nearMoonRatio(), 2),
        Typeset.places(ratios.orbitingMoonRatio(), 4),
        Typeset.places(100 * (ratios.orbitingMoonRatio() - 1), 2),
        Typeset.places(ratios.ruleOfThumbPercent(), 2));
  }
}
