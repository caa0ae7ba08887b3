package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.limbspan.demo.Demo;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Pass;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindow;
import org.limbspan.sky.SkyLight;
import org.limbspan.sky.WorthwhilePass;

/** Writes what lies ahead into the page of tonight. */
final class TonightSheets {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");
  private static final DateTimeFormatter DAY_CLOCK =
      DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

  private final TonightFacts facts;

  private TonightSheets(TonightFacts facts) {
    this.facts = facts;
  }

  static TonightSheet of(TonightFacts facts) {
    return new TonightSheets(facts).sheet();
  }

  private TonightSheet sheet() {
    Optional<ShootingPlan> plan = facts.plan();
    return new TonightSheet(
        facts.rig().slug(),
        facts.rig().name(),
        Demo.invented(facts.rig()),
        List.of(clock(DAY_CLOCK, facts.now())),
        opening(),
        TonightArcs.of(facts),
        plan.map(p -> events(p.pass())).orElse(List.of()),
        plan.map(this::windows).orElse(List.of()),
        plan.map(TonightChoice::words).orElse(List.of()),
        apsides(),
        facts.worthwhile().stream().map(this::night).toList(),
        facts.sight().isEmpty()
            ? "The ephemeris does not reach that far."
            : "No night of the coming two months offers a low and a high reading in the dark.",
        plan.flatMap(this::aim).map(TonightAdvice::of).orElse(TonightAdvice.general()),
        facts.rig().timeZone().getId());
  }

  private String clock(DateTimeFormatter form, Instant at) {
    return form.format(at.atZone(facts.rig().timeZone()));
  }

  private Optional<MoonSight> aim(ShootingPlan plan) {
    return plan.high().or(plan::low).map(ShootingWindow::best);
  }

  private List<String> opening() {
    if (facts.sight().isEmpty()) {
      return List.of("The ephemeris that this service carries ends here: nothing can be computed.");
    }
    MoonSight now = facts.sight().get();
    if (facts.plan().isEmpty()) {
      return List.of("The Moon does not rise over this rig within the coming two months.");
    }
    Pass pass = facts.plan().get().pass();
    MoonSight top = pass.culmination();
    List<String> words = new ArrayList<>();
    words.add(
        pass.riseAt().filter(facts.now()::isBefore).isPresent()
            ? "The Moon is down. It rises on "
                + clock(DAY_CLOCK, pass.riseAt().orElseThrow())
                + " in the "
                + TonightWords.direction(pass.rise().orElseThrow().azimuthDeg())
                + "."
            : "The Moon is up, "
                + TonightWords.altitude(now)
                + " high in the "
                + TonightWords.direction(now.azimuthDeg())
                + ".");
    boolean waxing = isWaxing();
    words.add(
        String.format(
            Locale.ROOT,
            "At its culmination it is %s, %.0f %% lit, %.2f\u2032 across, and %s km from the rig.",
            TonightWords.phase(top, waxing),
            100 * top.illuminatedFraction(),
            top.horizontalDiameterArcmin(),
            Typeset.whole(Math.round(top.topocentricDistanceKm()))));
    return words;
  }

  /** The lit part of the last sight of the pass against that of the first. */
  private boolean isWaxing() {
    List<MoonSight> track = facts.track();
    return track.get(track.size() - 1).illuminatedFraction() > track.get(0).illuminatedFraction();
  }

  private List<TonightSheet.Event> events(Pass pass) {
    List<TonightSheet.Event> events = new ArrayList<>();
    pass.rise().ifPresent(sight -> events.add(event("rise", sight)));
    events.add(event("culmination", pass.culmination()));
    pass.set().ifPresent(sight -> events.add(event("set", sight)));
    facts
        .own()
        .flatMap(TonightFacts.OwnHorizon::seen)
        .ifPresent(
            seen -> {
              seen.rise().ifPresent(sight -> events.add(event("comes over the line", sight)));
              seen.set().ifPresent(sight -> events.add(event("goes behind the line", sight)));
            });
    events.sort(Comparator.comparing(event -> Instant.parse(event.instant())));
    return events;
  }

  private TonightSheet.Event event(String name, MoonSight sight) {
    return new TonightSheet.Event(
        name,
        sight.at().toString(),
        clock(DAY_CLOCK, sight.at()),
        TonightWords.azimuth(sight),
        TonightWords.altitude(sight));
  }

  private List<TonightSheet.Window> windows(ShootingPlan plan) {
    return plan.windows().stream()
        .map(
            window ->
                new TonightSheet.Window(
                    TonightWords.place(window.place()),
                    clock(CLOCK, window.from()),
                    clock(CLOCK, window.best().at()),
                    clock(CLOCK, window.to()),
                    TonightWords.altitude(window.best()),
                    TonightWords.azimuth(window.best()),
                    TonightWords.light(window.light()),
                    !window.place().isLow() || plan.low().filter(window::equals).isPresent()))
        .toList();
  }

  private List<LedgerSheet.Dated> apsides() {
    return facts.apsides().stream()
        .limit(2)
        .map(
            apsis ->
                new LedgerSheet.Dated(
                    kind(apsis),
                    "in %s d, %s"
                        .formatted(
                            Typeset.places(
                                Duration.between(facts.now(), apsis.at()).toSeconds() / 86400.0, 1),
                            clock(DAY, apsis.at()))))
        .toList();
  }

  private static String kind(Apsis apsis) {
    return apsis.kind().name().toLowerCase(Locale.ROOT);
  }

  private TonightSheet.Night night(WorthwhilePass pass) {
    ShootingPlan plan = pass.plan();
    MoonSight top = plan.pass().culmination();
    return new TonightSheet.Night(
        top.at().toString(),
        clock(DAY, top.at()),
        plan.low().map(window -> clock(CLOCK, window.best().at())).orElse("\u2013"),
        plan.high().map(window -> clock(CLOCK, window.best().at())).orElse("\u2013"),
        Typeset.places(top.apparentAltitudeDeg(), 0),
        plan.ratio().isPresent() ? Typeset.places(plan.ratio().getAsDouble(), 4) : "\u2013",
        reason(pass));
  }

  private String reason(WorthwhilePass pass) {
    List<String> reasons = new ArrayList<>();
    if (pass.reasons().contains(WorthwhilePass.Reason.RATIO)) {
      reasons.add("high and dark: the ratio");
    }
    pass.apsis()
        .ifPresent(
            apsis ->
                reasons.add(
                    "%s on %s: the swing%s"
                        .formatted(kind(apsis), clock(DAY_CLOCK, apsis.at()), lightNote(pass))));
    return String.join("; ", reasons);
  }

  private static String lightNote(WorthwhilePass pass) {
    return pass.plan()
        .high()
        .filter(window -> !window.light().isDark())
        .map(window -> ", " + daylight(window) + ": caution")
        .orElse("");
  }

  private static String daylight(ShootingWindow window) {
    return window.light() == SkyLight.DAY
        ? "by day, the Sun in the sky"
        : "in " + TonightWords.light(window.light()) + ", the Sun just down";
  }
}
