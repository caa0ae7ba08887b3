package org.limbspan.notice;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.limbspan.rig.Rig;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindow;
import org.springframework.stereotype.Component;

/** Before the windows that the calendar holds, at the places that the recipient chose. */
@Component
class WindowReminders implements Occasion {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
  private static final String CAUTION =
      "Never point a lens or an eye at the Sun or near it. Mind the dark and the cold, and let"
          + " somebody know where you are; local rules come first.";

  private final ComingWindows windows;

  WindowReminders(ComingWindows windows) {
    this.windows = windows;
  }

  @Override
  public NoticeKind kind() {
    return NoticeKind.WINDOW_REMINDER;
  }

  @Override
  public List<Timely> of(Rig rig, Recipient recipient, Instant now) {
    return windows.chosen(rig, now).stream()
        .flatMap(
            plan ->
                recipient.wishes().reminder().places().stream()
                    .flatMap(place -> reminder(rig, recipient, plan, place, now).stream()))
        .toList();
  }

  private static Optional<Timely> reminder(
      Rig rig, Recipient recipient, ShootingPlan plan, Place place, Instant now) {
    Duration before = Duration.ofMinutes(recipient.wishes().reminder().minutesBefore());
    return place
        .of(plan)
        .filter(window -> !now.isBefore(window.from().minus(before)))
        .filter(window -> now.isBefore(window.from()))
        .map(
            window ->
                new Timely(about(plan, place), () -> letter(rig, place, window), window.to()));
  }

  /** The culmination to the nearest hour tells the passes apart, whatever is refined. */
  private static String about(ShootingPlan plan, Place place) {
    Instant hour =
        plan.pass().culminationAt().plus(30, ChronoUnit.MINUTES).truncatedTo(ChronoUnit.HOURS);
    return place.label() + " window of the pass about " + hour;
  }

  private static Letter letter(Rig rig, Place place, ShootingWindow window) {
    ZoneId zone = rig.timeZone();
    String from = CLOCK.format(window.from().atZone(zone));
    String text =
        String.format(
            Locale.ROOT,
            "Rig: %s%n%nThe Moon is %s from %s to %s (%s, %s), best at %s: altitude %.1f degrees,"
                + " azimuth %.0f degrees from north over east.%n%n%s%n",
            rig.name(),
            place.label(),
            from,
            CLOCK.format(window.to().atZone(zone)),
            DAY.format(window.from().atZone(zone)),
            zone,
            CLOCK.format(window.best().at().atZone(zone)),
            window.best().apparentAltitudeDeg(),
            window.best().azimuthDeg(),
            CAUTION);
    return new Letter(
        OneLine.of(rig.name() + ": Moon " + place.label() + " from " + from),
        text.replace(System.lineSeparator(), "\n"),
        "/rigs/" + rig.slug() + "/tonight");
  }
}
