package org.limbspan.notice;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.limbspan.rig.Outlook;
import org.limbspan.rig.Outlooks;
import org.limbspan.rig.RecordedHorizon;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindows;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** The passes that the calendar of a rig holds, and those that offered something in the past. */
@Component
class ComingWindows {

  private static final Duration BACK = Duration.ofDays(1);

  private final Sky sky;
  private final Rigs rigs;
  private final Outlooks outlooks;

  ComingWindows(Sky sky, Rigs rigs, Outlooks outlooks) {
    this.sky = sky;
    this.rigs = rigs;
    this.outlooks = outlooks;
  }

  /**
   * Of the coming 60 days those with a low and a high window in the dark and those worth staying up
   * for, as the calendar has them; none beyond the ephemeris.
   */
  List<ShootingPlan> chosen(Rig rig, Instant now) {
    return outlooks
        .of(rig.site(), line(rig), now)
        .map(outlook -> Outlook.chosen(outlook.darkPairs(), outlook.worthwhile()))
        .orElse(List.of());
  }

  /** Ends of the passes that offered a window, in order, from the first that ended after then. */
  Stream<Instant> ends(Rig rig, Instant from, Instant to) {
    return plans(rig, from.minus(BACK), to).stream()
        .filter(plan -> !plan.windows().isEmpty())
        .map(plan -> plan.windows().get(plan.windows().size() - 1).to())
        .filter(end -> end.isAfter(from) && !end.isAfter(to));
  }

  private List<ShootingPlan> plans(Rig rig, Instant from, Instant to) {
    if (from.minus(BACK).isBefore(sky.ephemerisFrom())
        || to.plus(BACK).isAfter(sky.ephemerisTo())
        || !from.isBefore(to)) {
      return List.of();
    }
    ShootingWindows windows = ShootingWindows.of(sky, rig.site(), line(rig));
    return sky.passes(from, to, rig.site()).stream().map(windows::plan).toList();
  }

  private Optional<HorizonLine> line(Rig rig) {
    return rigs.horizon(rig.id()).map(RecordedHorizon::line);
  }
}
