package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.PassNumber;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Setup;
import org.limbspan.scale.PlateScale;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * Makes the table of the Moon for the log page.
 *
 * <p>Rows are {@link #STEP} apart, a turn of 2.5 degrees. A cubic through four of them errs by less
 * than 0.001 arcminute in azimuth, and in the apparent altitude by less than 0.01 from 5 degrees
 * up, less than 0.1 from 1 degree up; on the horizon, where refraction bends sharply, by some
 * arcminutes. Seen beside the sky computed for the instant itself, over six days at one site.
 */
final class LogAlmanacs {

  static final Duration STEP = Duration.ofMinutes(10);
  private static final Duration BACK = Duration.ofHours(36);
  private static final Duration AHEAD = Duration.ofHours(108);

  private final Sky sky;
  private final InstrumentHistory history;
  private final Optional<HorizonLine> line;
  private final Site site;

  LogAlmanacs(Sky sky, InstrumentHistory history, Optional<HorizonLine> line) {
    this.sky = sky;
    this.history = history;
    this.line = line;
    this.site = history.rig().site();
  }

  /** The table about an instant, as far as the ephemeris reaches, with those of the readings. */
  LogAlmanac about(Instant at, List<Observation> observations) {
    Instant from =
        later(at.minus(BACK), sky.ephemerisFrom().plusSeconds(1)).truncatedTo(ChronoUnit.SECONDS);
    Instant to = earlier(at.plus(AHEAD), sky.ephemerisTo());
    List<MoonSight> sights =
        Stream.iterate(from, instant -> instant.isBefore(to), instant -> instant.plus(STEP))
            .map(instant -> sky.moonAt(instant, site))
            .toList();
    return new LogAlmanac(
        from.getEpochSecond(),
        STEP.toSeconds(),
        column(sights, MoonSight::altitudeDeg),
        column(sights, MoonSight::apparentAltitudeDeg),
        column(sights, MoonSight::azimuthDeg),
        column(sights, MoonSight::horizontalDiameterArcmin),
        column(sights, MoonSight::verticalDiameterArcmin),
        column(sights, MoonSight::sunAltitudeDeg),
        column(sights, MoonSight::sunSeparationDeg),
        sights.stream().map(sight -> PassNumber.of(sight, site)).toList(),
        line.map(HorizonLine::points).orElse(List.of()),
        history.setups().stream().map(this::inForce).toList(),
        observations.stream()
            .filter(o -> !o.takenAt().isBefore(from) && o.takenAt().isBefore(to))
            .map(this::held)
            .toList());
  }

  /** To 0.00001, a thousandth of an arcminute. */
  private static List<Double> column(List<MoonSight> sights, ToDoubleFunction<MoonSight> value) {
    return sights.stream()
        .map(sight -> Math.round(value.applyAsDouble(sight) * 1e5) / 1e5)
        .toList();
  }

  private LogAlmanac.InForce inForce(Setup setup) {
    Optional<PlateScale> scale = history.scaleOf(setup).map(mean -> mean.scale());
    return new LogAlmanac.InForce(
        setup.number(),
        setup.startedAt().map(Instant::getEpochSecond).orElse(null),
        scale.map(s -> s.unit().symbol()).orElse(null),
        scale.map(PlateScale::arcsecPerUnit).orElse(null),
        scale.map(PlateScale::relativeUncertainty).orElse(null));
  }

  private LogAlmanac.Held held(Observation observation) {
    return new LogAlmanac.Held(
        observation.takenAt().getEpochSecond(),
        observation.axis().label(),
        observation.setup(),
        PassNumber.of(observation.sight(), site),
        observation.sight().apparentAltitudeDeg(),
        observation.observedArcmin(),
        observation.predictedArcmin(),
        observation.relativeUncertainty());
  }

  private static Instant later(Instant first, Instant second) {
    return first.isAfter(second) ? first : second;
  }

  private static Instant earlier(Instant first, Instant second) {
    return first.isBefore(second) ? first : second;
  }
}
