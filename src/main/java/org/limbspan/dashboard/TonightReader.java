package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.limbspan.dashboard.TonightFacts.OwnHorizon;
import org.limbspan.rig.Outlook;
import org.limbspan.rig.Outlooks;
import org.limbspan.rig.Rig;
import org.limbspan.sky.HorizonLine;
import org.limbspan.sky.LineCrossings;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Pass;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** Computes what lies ahead for a rig. */
@Component
class TonightReader {

  private static final Duration BEFORE_AND_AFTER = Duration.ofMinutes(45);
  private static final Duration STEP = Duration.ofMinutes(10);

  private final Sky sky;
  private final Outlooks outlooks;

  TonightReader(Sky sky, Outlooks outlooks) {
    this.sky = sky;
    this.outlooks = outlooks;
  }

  /** What lies ahead of a rig, over its own horizon where that is known. */
  TonightFacts read(Rig rig, Optional<HorizonLine> line, Instant now) {
    return outlooks
        .of(rig.site(), line, now)
        .map(outlook -> facts(rig, line, now, outlook))
        .orElseGet(() -> beyond(rig, now));
  }

  /** Of a time that the ephemeris does not reach. */
  private static TonightFacts beyond(Rig rig, Instant now) {
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

  private TonightFacts facts(Rig rig, Optional<HorizonLine> line, Instant now, Outlook outlook) {
    List<ShootingPlan> plans = outlook.plans();
    return new TonightFacts(
        rig,
        now,
        Optional.of(sky.moonAt(now, rig.site())),
        plans.stream().findFirst(),
        line.map(own -> own(own, rig.site(), plans)),
        plans.isEmpty() ? List.of() : track(plans.get(0).pass(), rig.site()),
        outlook.apsides(),
        outlook.darkPairs(),
        outlook.worthwhile());
  }

  private OwnHorizon own(HorizonLine line, Site site, List<ShootingPlan> plans) {
    return new OwnHorizon(
        line,
        plans.stream()
            .findFirst()
            .flatMap(plan -> LineCrossings.of(sky, site, line).over(plan.pass())));
  }

  private List<MoonSight> track(Pass pass, Site site) {
    List<MoonSight> track = new ArrayList<>();
    Instant end = pass.endAt().plus(BEFORE_AND_AFTER);
    Instant at = pass.startAt().minus(BEFORE_AND_AFTER);
    for (; !at.isAfter(end); at = at.plus(STEP)) {
      track.add(sky.moonAt(at, site));
    }
    return List.copyOf(track);
  }
}
