package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.hipparchus.stat.descriptive.rank.Median;
import org.limbspan.cycle.Observation;

/** Since when a clock is wrong, and by how much. */
final class ClockEstimate {

  private ClockEstimate() {}

  static Estimated of(Stretch stretch, ClockLens lens) {
    Onsets onsets = new Onsets(stretch, lens, (track, fact) -> {});
    List<Fact> readings = stretch.readingsFrom(onsets.first());
    double squares = 0;
    double variances = 0;
    for (Fact fact : readings) {
      squares += Priors.square(lens.offset(fact));
      variances += onsets.likeliest().track().noiseVariance() * Priors.square(fact.stated);
    }
    int count = readings.size();
    double size = 100 * Math.sqrt(squares / count);
    double uncertainty = 100 * Math.sqrt(variances) / count;
    return Estimated.of(onsets, size, uncertainty, figures(readings, lens));
  }

  private static Figures.Clock figures(List<Fact> readings, ClockLens lens) {
    Instant logged = readings.get(0).at;
    Instant truly = lens.correction.trueInstant().apply(logged);
    double offsetHours = Duration.between(truly, logged).toMillis() / 3600e3;
    List<Observation> observations =
        readings.stream().map(fact -> fact.observation.orElseThrow()).toList();
    long below = observations.stream().filter(o -> Sighting.belowHorizon(o.sight())).count();
    double[] off =
        observations.stream()
            .filter(o -> o.sighted().altitudeDeg().isPresent())
            .mapToDouble(
                o -> o.sighted().altitudeDeg().getAsDouble() - o.sight().apparentAltitudeDeg())
            .toArray();
    double median = off.length == 0 ? 0 : new Median().evaluate(off);
    return new Figures.Clock(offsetHours, Math.toIntExact(below), median);
  }
}
