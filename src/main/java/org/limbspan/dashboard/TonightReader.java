package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.limbspan.dashboard.TonightFacts.OwnHorizon;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.LineCrossings;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Pass;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindows;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.WorthwhilePass;
import org.springframework.stereotype.Component;

/** Computes what lies ahead for a rig. */
@Component
class TonightReader {

  static final Duration AHEAD = Duration.ofDays(60);

  private static final Duration BACK = Duration.ofDays(1);
  private static final Duration HALF_A_TURN = Duration.ofHours(13);
  private static final Duration BEFORE_AND_AFTER = Duration.ofMinutes(45);
  private static final Duration STEP = Duration.ofMinutes(10);

  private static final int MOST_KEPT = 100;

  private final Sky sky;
  private final Map<Place, Outlook> kept = new ConcurrentHashMap<>();

  TonightReader(Sky sky) {
    this.sky = sky;
  }

  /** What lies ahead of a rig, over its own horizon where that is known. */
  TonightFacts read(Rig rig, Optional<HorizonLine> line, Instant now) {
    Instant hour = now.truncatedTo(ChronoUnit.HOURS);
    if (hour.minus(BACK).isBefore(sky.ephemerisFrom())
        || now.plus(AHEAD).plus(BACK).isAfter(sky.ephemerisTo())) {
      return new TonightFacts(
          rig,
          now,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of(),
          List.of(),
          List.of());
    }
    Outlook outlook = outlook(new Place(rig.site(), line), hour);
    List<ShootingPlan> plans =
        outlook.plans().stream().filter(plan -> end(plan.pass()).isAfter(now)).toList();
    List<Apsis> apsides =
        outlook.apsides().stream().filter(apsis -> apsis.at().isAfter(now)).toList();
    return new TonightFacts(
        rig,
        now,
        Optional.of(sky.moonAt(now, rig.site())),
        plans.stream().findFirst(),
        line.map(own -> own(own, rig.site(), plans)),
        plans.isEmpty() ? List.of() : track(plans.get(0).pass(), rig.site()),
        apsides,
        plans.stream().filter(ShootingPlan::isDarkPair).toList(),
        WorthwhilePass.among(plans, apsides));
  }

  private OwnHorizon own(HorizonLine line, Site site, List<ShootingPlan> plans) {
    return new OwnHorizon(
        line,
        plans.stream()
            .findFirst()
            .flatMap(plan -> LineCrossings.of(sky, site, line).over(plan.pass())));
  }

  /** A site with the horizon that is known of it. */
  private record Place(Site site, Optional<HorizonLine> line) {}

  /** What lies ahead of a place, as computed for a full hour. */
  private record Outlook(Instant hour, List<ShootingPlan> plans, List<Apsis> apsides) {}

  private Outlook outlook(Place place, Instant hour) {
    Outlook before = kept.get(place);
    if (before != null && before.hour().equals(hour)) {
      return before;
    }
    Outlook now = new Outlook(hour, plans(place, hour), sky.apsides(hour, hour.plus(AHEAD)));
    if (kept.size() >= MOST_KEPT) {
      kept.clear();
    }
    kept.put(place, now);
    return now;
  }

  /** What the passes that are not over by then offer, in order of time. */
  private List<ShootingPlan> plans(Place place, Instant from) {
    ShootingWindows windows = ShootingWindows.of(sky, place.site(), place.line());
    return sky.passes(from.minus(BACK), from.plus(AHEAD), place.site()).stream()
        .filter(pass -> end(pass).isAfter(from))
        .map(windows::plan)
        .toList();
  }

  private List<MoonSight> track(Pass pass, Site site) {
    List<MoonSight> track = new ArrayList<>();
    Instant end = end(pass).plus(BEFORE_AND_AFTER);
    Instant at = start(pass).minus(BEFORE_AND_AFTER);
    for (; !at.isAfter(end); at = at.plus(STEP)) {
      track.add(sky.moonAt(at, site));
    }
    return List.copyOf(track);
  }

  private static Instant start(Pass pass) {
    Instant earliest = pass.culminationAt().minus(HALF_A_TURN);
    return pass.riseAt().filter(earliest::isBefore).orElse(earliest);
  }

  private static Instant end(Pass pass) {
    Instant latest = pass.culminationAt().plus(HALF_A_TURN);
    return pass.setAt().filter(latest::isAfter).orElse(latest);
  }
}
