package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertCause;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.Explanation;
import org.limbspan.watch.HypothesesResult;
import org.limbspan.watch.NightsResult;
import org.limbspan.watch.OwnResult;

/** An invented ledger with as many readings as a test needs, a nudge in its middle if it wants. */
final class InventedLedger {

  static final Instant FIRST = Instant.parse("2024-03-01T20:00:00Z");
  static final Site SITE = new Site(48.2, 16.4, 170);
  private static final Duration STEP = Duration.ofHours(37);

  private InventedLedger() {}

  static Instant at(int reading) {
    return FIRST.plus(STEP.multipliedBy(reading));
  }

  static LedgerFacts of(int readings, List<Alert> alerts) {
    List<Observation> observations =
        IntStream.range(0, readings).mapToObj(i -> observation(i, readings, alerts)).toList();
    return new LedgerFacts(
        1,
        "invented",
        "Invented garden",
        SITE,
        new RigTime(ZoneId.of("Europe/Vienna")),
        null,
        true,
        List.of(),
        List.of(FIRST.minus(Duration.ofDays(1))),
        observations,
        Set.of(),
        0,
        new CycleResult(
            readings,
            new CycleResult.Swing(1.00312, 0.00417, "agrees"),
            new CycleResult.Period(27.5523, 0.0071),
            null,
            null,
            List.of(
                month(FIRST, 12.4193, 0.2123, "agrees"), month(at(18), 9.62, 0.0951, "departs")),
            List.of()),
        nights(),
        new HypothesesResult(List.of(), null, List.of(), List.of()),
        new OwnResult(0, null, null, null, null, 0),
        alerts,
        at(readings),
        false,
        List.of());
  }

  private static CycleResult.Month month(
      Instant perigee, double swing, double uncertainty, String verdict) {
    Duration half = Duration.ofDays(14);
    return new CycleResult.Month(
        perigee,
        perigee.plus(half),
        perigee.plus(half).plus(half),
        7,
        swing,
        uncertainty,
        12.3456,
        verdict);
  }

  private static NightsResult nights() {
    NightsResult.Night night =
        new NightsResult.Night(
            at(3), at(3), at(4), 12, 48, "horizontal", 2, 1.0118, 0.0013, 1.0121, "agrees");
    return new NightsResult(
        List.of(night),
        new NightsResult.Summary(1, 0.97, 0.11, 1.0118, 1.0121, 0.0013, null, null, "agrees"));
  }

  private static Observation observation(int i, int readings, List<Alert> alerts) {
    MoonSight sight = SkyFixture.sky().moonAt(at(i), SITE);
    double level = !alerts.isEmpty() && i >= readings / 2 ? 0.006 : 0;
    double noise = i % 2 == 0 ? 0.0005 : -0.0005;
    return new Observation(
        at(i),
        Axis.HORIZONTAL,
        sight.horizontalDiameterArcmin() * Math.exp(level + noise),
        0.001,
        sight,
        0,
        Sighted.NONE);
  }

  static Alert step(int readings, String state) {
    return alert(readings, "scale-step", state);
  }

  /** One that waits for an answer. */
  static Alert alert(int readings, String kind) {
    return alert(readings, kind, "raised");
  }

  private static Alert alert(int readings, String kind, String state) {
    Instant onset = at(readings / 2).minus(Duration.ofHours(12));
    return new Alert(
        new UUID(0, 1),
        kind,
        state,
        0,
        onset,
        onset.minus(Duration.ofDays(2)),
        onset.plus(Duration.ofDays(1)),
        null,
        at(readings),
        null,
        at(readings / 2 + 2),
        0.613,
        0.033,
        0.9999,
        "",
        new Explanation(
            "Every disc became larger.", "By much.", "Since then.", "Sure.", "Shown.", "", "Look."),
        List.of(new AlertCause("zoom-moved", 0.934, "the zoom was touched")),
        List.of(),
        List.of());
  }
}
