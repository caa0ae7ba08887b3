package org.limbspan.dashboard;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.ProdId;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.immutable.ImmutableCalScale;
import net.fortuna.ical4j.model.property.immutable.ImmutableTransp;
import net.fortuna.ical4j.model.property.immutable.ImmutableVersion;
import org.limbspan.rig.Outlook;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindow;
import org.limbspan.sky.WorthwhilePass;

/**
 * The chosen windows as a calendar (RFC 5545): low and high of every pair that can be had in the
 * dark, and of the passes worth staying up for. Times are UTC, cut to the second.
 */
final class PassCalendar {

  private static final String CAUTION =
      " Never point a lens or an eye at the Sun or near it. Mind the dark and the cold; local rules"
          + " come first.";

  private final TonightFacts facts;
  private final Calendar calendar = new Calendar();

  private PassCalendar(TonightFacts facts) {
    this.facts = facts;
  }

  /** The calendar as its file, in UTF-8, long lines folded. */
  static byte[] of(TonightFacts facts) throws IOException {
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    new CalendarOutputter().output(new PassCalendar(facts).write(), file);
    return file.toByteArray();
  }

  private Calendar write() {
    calendar.add(new ProdId("-//Limbspan//Passes of the Moon//EN"));
    calendar.add(ImmutableVersion.VERSION_2_0);
    calendar.add(ImmutableCalScale.GREGORIAN);
    for (ShootingPlan plan : Outlook.chosen(facts.dark(), facts.worthwhile())) {
      plan.low().ifPresent(window -> calendar.add(event(plan, window)));
      plan.high().ifPresent(window -> calendar.add(event(plan, window)));
    }
    return calendar;
  }

  private VEvent event(ShootingPlan plan, ShootingWindow window) {
    String word = window.place().isLow() ? "low" : "high";
    VEvent event = new VEvent(false);
    event.add(new Uid(uid(plan, word)));
    event.add(new DtStamp(facts.now().truncatedTo(ChronoUnit.SECONDS)));
    event.add(new DtStart<>(window.from()));
    event.add(new DtEnd<>(window.to()));
    event.add(new Summary("Moon " + word + ", " + facts.rig().name() + worth(plan)));
    event.add(new Description(description(plan, window)));
    event.add(ImmutableTransp.TRANSPARENT);
    return event;
  }

  /** The culmination to the nearest hour tells the passes of a rig apart, whatever is refined. */
  private String uid(ShootingPlan plan, String word) {
    Instant hour =
        plan.pass().culminationAt().plus(30, ChronoUnit.MINUTES).truncatedTo(ChronoUnit.HOURS);
    return facts.rig().slug() + "-" + hour.getEpochSecond() / 3600 + "-" + word + "@limbspan";
  }

  private String worth(ShootingPlan plan) {
    return pass(plan).isPresent() ? ": worth staying up for" : "";
  }

  private Optional<WorthwhilePass> pass(ShootingPlan plan) {
    return facts.worthwhile().stream().filter(pass -> pass.plan().equals(plan)).findFirst();
  }

  private static String description(ShootingPlan plan, ShootingWindow window) {
    String ratio =
        plan.ratio().isPresent()
            ? String.format(
                Locale.ROOT, " Expected ratio high over low: %.4f.", plan.ratio().getAsDouble())
            : "";
    return "Best at "
        + second(window.best().at())
        + ", "
        + TonightWords.altitude(window.best())
        + " high in the "
        + TonightWords.direction(window.best().azimuthDeg())
        + ", sky: "
        + TonightWords.light(window.light())
        + ". Culmination at "
        + second(plan.pass().culminationAt())
        + "."
        + ratio
        + CAUTION;
  }

  private static Instant second(Instant at) {
    return at.truncatedTo(ChronoUnit.SECONDS);
  }
}
