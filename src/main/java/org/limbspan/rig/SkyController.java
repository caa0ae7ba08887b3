package org.limbspan.rig;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Query;
import org.limbspan.intake.Range;
import org.limbspan.platform.InvalidInput;
import org.limbspan.sky.Axis;
import org.limbspan.sky.LineCrossings;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The computed sky, for a rig or for any place. */
@RestController
@RequestMapping("/api")
class SkyController {

  private static final Duration LONGEST_OF_APSIDES = Duration.ofDays(36_525);
  private static final Duration LONGEST_OF_PASSES = Duration.ofDays(3660);

  private final Sky sky;
  private final Predictions predictions;
  private final Rigs rigs;
  private final Clock clock;

  SkyController(Sky sky, Predictions predictions, Rigs rigs, Clock clock) {
    this.sky = sky;
    this.predictions = predictions;
    this.rigs = rigs;
    this.clock = clock;
  }

  @GetMapping("/sky")
  Predicted sky(@RequestParam Map<String, String> query) {
    Site site =
        query.containsKey("rig") ? rigs.find(query.getOrDefault("rig", "")).site() : site(query);
    return predictions.at(instant(query.get("at")), site, Axis.HORIZONTAL);
  }

  @GetMapping("/apsides")
  List<ApsisView> apsides(
      @RequestParam(required = false) @Nullable String from,
      @RequestParam(required = false) @Nullable String to) {
    Interval interval = Interval.of(from, to, LONGEST_OF_APSIDES, sky);
    return sky.apsides(interval.from(), interval.to()).stream().map(ApsisView::of).toList();
  }

  @GetMapping("/rigs/{slug}/passes")
  List<PassView> passes(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String from,
      @RequestParam(required = false) @Nullable String to) {
    Rig rig = rigs.find(slug);
    Interval interval = Interval.of(from, to, LONGEST_OF_PASSES, sky);
    Optional<LineCrossings> crossings =
        rigs.horizon(rig.id()).map(held -> LineCrossings.of(sky, rig.site(), held.line()));
    return sky.passes(interval.from(), interval.to(), rig.site()).stream()
        .map(pass -> PassView.of(pass, crossings))
        .toList();
  }

  private Instant instant(@Nullable String at) {
    Instant instant = at == null ? clock.instant() : Query.instant("at", at);
    if (instant.isBefore(sky.ephemerisFrom()) || !instant.isBefore(sky.ephemerisTo())) {
      throw InvalidInput.inQuery(
          "at",
          at,
          "an instant from %s to before %s, the reach of the ephemeris"
              .formatted(sky.ephemerisFrom(), sky.ephemerisTo()));
    }
    return instant;
  }

  private static Site site(Map<String, String> query) {
    return new Site(
        number(query, "latitudeDeg", Range.between(-90, 90)),
        number(query, "longitudeDeg", Range.between(-180, 180)),
        number(query, "elevationM", Range.between(-500, 9000)));
  }

  private static double number(Map<String, String> query, String name, Range range) {
    return Query.number(name, query.getOrDefault(name, ""), range);
  }
}
