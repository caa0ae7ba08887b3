package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.sky.SkyFixture;

/**
 * One service that judged a rig again and again, and one that sees its ledger for the first time,
 * say the same to the last bit: whatever was appended, came late, was corrected, taken back or
 * entered twice in between.
 */
class JudgingPropertyTest {

  @Test
  void judgesOnAsIfItHadBegunAnew() {
    InventedLedger ledger = new InventedLedger(2);
    Random random = new Random(2);
    Judging on = new Judging(SkyFixture.sky());
    List<StandardisedReading> late = new ArrayList<>();
    ledger.readings.addAll(ledger.taken(1000));
    for (int step = 0; step < 24; step++) {
      List<StandardisedReading> known = ledger.readings;
      switch (step % 8) {
        case 2 -> late.addAll(ledger.taken(3));
        case 3 -> known.remove(random.nextInt(known.size()));
        case 4 -> {
          int at = random.nextInt(known.size());
          known.set(at, ledger.corrected(known.get(at), 1.001));
        }
        case 5 -> {
          known.addAll(late);
          late.clear();
        }
        case 6 -> known.remove(known.size() - 1);
        case 7 -> {
          known.add(known.get(random.nextInt(known.size())));
          change(ledger, step);
          Collections.shuffle(known, random);
        }
        default -> known.addAll(ledger.taken(1 + random.nextInt(12)));
      }
      assertSame(ledger.judgedBy(on), ledger.judgedBy(new Judging(SkyFixture.sky())), step);
    }
  }

  /** A zoom that slips, a calibration that follows it, a new setup. */
  private static void change(InventedLedger ledger, int step) {
    switch (step) {
      case 7 -> {
        ledger.grow(1.006);
        ledger.readings.addAll(ledger.taken(8));
      }
      case 15 -> ledger.calibrate(ledger.last(), 1107);
      default -> {
        ledger.beginSetup();
        ledger.readings.addAll(ledger.taken(5));
      }
    }
  }

  private static void assertSame(Judging.Result on, Judging.Result anew, int step) {
    assertThat(on.findings()).as("findings, step %d", step).isEqualTo(anew.findings());
    JudgementDocument known = on.document();
    JudgementDocument fresh = anew.document();
    assertThat(known.cycle()).as("cycle, step %d", step).isEqualTo(fresh.cycle());
    assertThat(known.nights().summary())
        .as("nights, step %d", step)
        .isEqualTo(fresh.nights().summary());
    assertThat(known.nights().nights().equals(fresh.nights().nights()))
        .as("each night, step %d", step)
        .isTrue();
    assertThat(known.hypotheses()).as("hypotheses, step %d", step).isEqualTo(fresh.hypotheses());
    assertThat(known.own()).as("own, step %d", step).isEqualTo(fresh.own());
  }
}
