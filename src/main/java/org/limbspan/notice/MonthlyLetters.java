package org.limbspan.notice;

import java.time.Instant;
import java.time.LocalTime;
import java.time.YearMonth;
import java.util.List;
import org.limbspan.reading.Readings;
import org.limbspan.rig.Rig;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Component;

/** On the first of each month after noon, the month that is over and the cycle so far. */
@Component
class MonthlyLetters implements Occasion {

  private final Watch watch;
  private final Readings readings;

  MonthlyLetters(Watch watch, Readings readings) {
    this.watch = watch;
    this.readings = readings;
  }

  @Override
  public NoticeKind kind() {
    return NoticeKind.MONTHLY_LETTER;
  }

  @Override
  public List<Timely> of(Rig rig, Recipient recipient, Instant now) {
    YearMonth current = YearMonth.from(now.atZone(rig.timeZone()));
    Instant noon = current.atDay(1).atTime(LocalTime.NOON).atZone(rig.timeZone()).toInstant();
    if (now.isBefore(noon) || !recipient.createdAt().isBefore(noon)) {
      return List.of();
    }
    YearMonth over = current.minusMonths(1);
    return List.of(new Timely("letter of " + over, () -> letter(rig, over), null));
  }

  private Letter letter(Rig rig, YearMonth month) {
    Instant from = month.atDay(1).atStartOfDay(rig.timeZone()).toInstant();
    Instant to = month.plusMonths(1).atDay(1).atStartOfDay(rig.timeZone()).toInstant();
    return new MonthWords(rig, month, readings.between(rig.id(), from, to).size())
        .letter(watch.judgement(rig), watch.alerts(rig));
  }
}
