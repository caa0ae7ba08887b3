package org.limbspan.notice;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.limbspan.rig.RecordedHorizon;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindows;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.WorthwhilePass;
import org.springframework.stereotype.Component;

/** The passes that the calendar of a rig holds, and those that offered something in the past. */
@Component
class ComingWindows {

  private static final Duration AHEAD = Duration.ofDays(60);
  private static final Duration BACK = Duration.ofDays(1);
  private static final int MOST_KEPT = 100;

  private final Sky sky;
  private final Rigs rigs;
  private final Map<Spot, Outlook> kept = new ConcurrentHashMap<>();

  ComingWindows(Sky sky, Rigs rigs) {
    this.sky = sky;
    this.rigs = rigs;
  }

  private record Spot(Site site, Optional<HorizonLine> line) {}

  private record Outlook(Instant hour, List<ShootingPlan> plans) {}

  /**
   * Of the coming 60 days those with a low and a high window in the dark and those worth staying up
   * for, as the calendar has them; none beyond the ephemeris.
   */
  List<ShootingPlan> chosen(Rig rig, Instant now) {
    Instant hour = now.truncatedTo(ChronoUnit.HOURS);
    Spot place = place(rig);
    Outlook before = kept.get(place);
    if (before != null && before.hour().equals(hour)) {
      return before.plans();
    }
    Outlook outlook = new Outlook(hour, choose(place, hour));
    if (kept.size() >= MOST_KEPT) {
      kept.clear();
    }
    kept.put(place, outlook);
    return outlook.plans();
  }

  private List<ShootingPlan> choose(Spot place, Instant hour) {
    List<ShootingPlan> plans = plans(place, hour.minus(BACK), hour.plus(AHEAD));
    if (plans.isEmpty()) {
      return List.of();
    }
    return Stream.concat(
            plans.stream().filter(ShootingPlan::isDarkPair),
            WorthwhilePass.among(plans, sky.apsides(hour, hour.plus(AHEAD))).stream()
                .map(WorthwhilePass::plan))
        .distinct()
        .toList();
  }

  /** Ends of the passes that offered a window, in order, from the first that ended after then. */
  Stream<Instant> ends(Rig rig, Instant from, Instant to) {
    return plans(place(rig), from.minus(BACK), to).stream()
        .filter(plan -> !plan.windows().isEmpty())
        .map(plan -> plan.windows().get(plan.windows().size() - 1).to())
        .filter(end -> end.isAfter(from) && !end.isAfter(to));
  }

  private List<ShootingPlan> plans(Spot place, Instant from, Instant to) {
    if (from.minus(BACK).isBefore(sky.ephemerisFrom())
        || to.plus(BACK).isAfter(sky.ephemerisTo())
        || !from.isBefore(to)) {
      return List.of();
    }
    ShootingWindows windows = ShootingWindows.of(sky, place.site(), place.line());
    return sky.passes(from, to, place.site()).stream().map(windows::plan).toList();
  }

  private Spot place(Rig rig) {
    return new Spot(rig.site(), rigs.horizon(rig.id()).map(RecordedHorizon::line));
  }
}
