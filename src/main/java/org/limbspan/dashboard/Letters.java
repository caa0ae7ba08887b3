package org.limbspan.dashboard;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Query;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Component;

/** The letter of a rig about an interval, or about its latest month. */
@Component
class Letters {

  private static final Duration LONGEST = Duration.ofDays(3660);
  private static final Duration WITHOUT_MONTHS = Duration.ofDays(28);

  private final LedgerReader ledger;
  private final Rigs rigs;
  private final Watch watch;
  private final Sky sky;
  private final Clock clock;

  Letters(LedgerReader ledger, Rigs rigs, Watch watch, Sky sky, Clock clock) {
    this.ledger = ledger;
    this.rigs = rigs;
    this.watch = watch;
    this.sky = sky;
    this.clock = clock;
  }

  /**
   * The letter.
   *
   * @param from and {@code to}: an interval, both or neither
   * @throws InvalidInput if they are none
   */
  LetterSheet of(String slug, @Nullable String from, @Nullable String to) {
    LedgerFacts facts = ledger.read(slug);
    Rig rig = rigs.find(slug);
    CycleResult.@Nullable Month latest = LetterSheets.latest(facts);
    Instant begin =
        from != null
            ? Query.instant("from", from)
            : to != null
                ? Query.instant("to", to).minus(WITHOUT_MONTHS)
                : latest == null ? clock.instant().minus(WITHOUT_MONTHS) : latest.perigeeAt();
    Instant end =
        to != null
            ? Query.instant("to", to)
            : from != null
                ? begin.plus(WITHOUT_MONTHS)
                : latest == null ? clock.instant() : latest.nextPerigeeAt();
    if (!begin.isBefore(end) || Duration.between(begin, end).compareTo(LONGEST) > 0) {
      throw InvalidInput.inQuery(
          "to", String.valueOf(to), "an instant after from, at most ten years later");
    }
    return new LetterSheets(facts, rigs.history(rig), sky, begin, end)
        .sheet(watch.conclusions(rig, false));
  }
}
