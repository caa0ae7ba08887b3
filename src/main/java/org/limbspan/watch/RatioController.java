package org.limbspan.watch;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.limbspan.cycle.LatitudeRatios;
import org.limbspan.cycle.NearMoon;
import org.limbspan.intake.Query;
import org.limbspan.intake.Range;
import org.limbspan.platform.InvalidInput;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** What each hypothesis expects of a night, by latitude; no rig is asked. */
@RestController
class RatioController {

  private static final String LATITUDE = "latitudeDeg";
  private static final String STEP = "stepDeg";
  private static final String HEIGHT = "nearMoonHeightKm";
  private static final int MOST_LATITUDES = 400;
  private static final int NORTHERNMOST_DEG = 85;

  /**
   * @param query {@code latitudeDeg}: one or several by commas; without it every {@code stepDeg}
   *     (5) from 85 to -85; {@code nearMoonHeightKm}: 4828.032 if not given
   */
  @GetMapping("/api/hypotheses/ratios")
  RatioTable ratios(@RequestParam Map<String, String> query) {
    double heightKm =
        Optional.ofNullable(query.get(HEIGHT))
            .map(value -> Query.number(HEIGHT, value, Range.between(1, 1_000_000)))
            .orElse(NearMoon.HEIGHT_KM);
    String given = query.get(LATITUDE);
    List<Double> latitudes = given == null ? everywhere(query) : listed(given);
    return new RatioTable(
        heightKm,
        LatitudeRatios.MEAN_DISTANCE_KM,
        latitudes.stream().map(latitude -> LatitudeRatios.at(latitude, heightKm)).toList());
  }

  private static List<Double> listed(String given) {
    String[] parts = given.split(",", -1);
    if (parts.length > MOST_LATITUDES) {
      throw InvalidInput.inQuery(
          LATITUDE, parts.length + " latitudes", "at most " + MOST_LATITUDES);
    }
    return Arrays.stream(parts)
        .map(part -> Query.number(LATITUDE, part, Range.between(-89.9, 89.9)))
        .toList();
  }

  private static List<Double> everywhere(Map<String, String> query) {
    int step =
        Optional.ofNullable(query.get(STEP))
            .map(value -> Query.whole(STEP, value, Range.between(1, 85)))
            .orElse(5);
    return IntStream.iterate(NORTHERNMOST_DEG, at -> at >= -NORTHERNMOST_DEG, at -> at - step)
        .mapToObj(at -> (double) at)
        .toList();
  }
}
