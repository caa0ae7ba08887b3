package org.limbspan.demo;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.limbspan.reading.BadLines;
import org.limbspan.reading.Readings;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AnswerCause;
import org.limbspan.watch.NewAnswer;
import org.limbspan.watch.Remedy;
import org.limbspan.watch.Watch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;

/**
 * Two invented rigs on two continents over two years: upright diameters logged as horizontal for a
 * month, a calibration with the sheet a metre too near, a nudged zoom; all of it found, answered
 * and put right.
 */
@Service
public class TwoGardens {

  private static final Logger LOG = LoggerFactory.getLogger(TwoGardens.class);
  private static final Duration PATIENCE = Duration.ofMinutes(5);
  private static final long PAUSE_MILLIS = 500;
  private static final int MOST_ROUNDS = 8;
  private static final int WRONG_CALIBRATION = 6;

  static final GardenRig NORTH =
      new GardenRig(
          "invented-orchard",
          "Orchard wall (invented)",
          new Site(50.08, 14.43, 290),
          ZoneId.of("Europe/Prague"),
          new GardenRig.Mishaps(
              Instant.parse("2025-09-20T10:00:00Z"),
              0.5,
              Instant.parse("2025-01-28T12:00:00Z"),
              Instant.parse("2025-02-28T12:00:00Z"),
              -1),
          20_240_501);

  static final GardenRig SOUTH =
      new GardenRig(
          "invented-water-tower",
          "Water tower (invented)",
          new Site(-26.2, 28.05, 1720),
          ZoneId.of("Africa/Johannesburg"),
          new GardenRig.Mishaps(GardenRig.TO, 0, GardenRig.TO, GardenRig.TO, WRONG_CALIBRATION),
          20_240_502);

  private final Rigs rigs;
  private final Readings readings;
  private final Watch watch;
  private final Sky sky;
  private final Clock clock;
  private final AtomicBoolean busy = new AtomicBoolean();

  TwoGardens(Rigs rigs, Readings readings, Watch watch, Sky sky, Clock clock) {
    this.rigs = rigs;
    this.readings = readings;
    this.watch = watch;
    this.sky = sky;
    this.clock = clock;
  }

  static boolean isOne(String slug) {
    return slug.equals(NORTH.slug()) || slug.equals(SOUTH.slug());
  }

  /** Enters both and answers what is found, away from whoever asks; once at a time. */
  public void begin() {
    if (busy.compareAndSet(false, true)) {
      Thread worker =
          new Thread(
              () -> {
                try {
                  enter();
                } catch (RuntimeException failed) {
                  LOG.error("the two invented gardens were not finished", failed);
                } finally {
                  busy.set(false);
                }
              },
              "two-gardens");
      worker.setDaemon(true);
      worker.start();
    }
  }

  /** Enters both and answers what is found; what is held already is left as it is. */
  void enter() {
    for (GardenRig garden : List.of(NORTH, SOUTH)) {
      Rig rig = rig(garden);
      if (readings.extent(rig.id()).count() == 0) {
        rigs.record(rig, garden.calibrations());
        readings.record(rig, garden.readings(sky), BadLines.REFUSE_BATCH);
      }
    }
    for (GardenRig garden : List.of(NORTH, SOUTH)) {
      settle(garden);
    }
  }

  private Rig rig(GardenRig garden) {
    return rigs.all().stream()
        .filter(held -> held.slug().equals(garden.slug()))
        .findFirst()
        .orElseGet(() -> rigs.describe(garden.description()));
  }

  /** One answer at a time: what is put right may settle the rest. */
  private void settle(GardenRig garden) {
    Rig rig = rig(garden);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      awaitJudgement(rig);
      Optional<Alert> waiting =
          watch.alerts(rig).stream().filter(alert -> alert.state().equals("raised")).findFirst();
      if (waiting.isEmpty()) {
        return;
      }
      answer(rig, garden, waiting.get());
    }
  }

  private void answer(Rig rig, GardenRig garden, Alert alert) {
    GardenRig.Mishaps mishaps = garden.mishaps();
    NewAnswer answer =
        switch (alert.kind()) {
          case "altitude-trend" ->
              new NewAnswer(
                  AnswerCause.WRONG_ENTRY,
                  "invented: measured upright that month, logged as horizontal",
                  mishaps.axisWrongFrom(),
                  new Remedy.Relabel(Axis.VERTICAL));
          case "scale-step" ->
              holds(alert, mishaps.nudgedAt())
                  ? new NewAnswer(
                      AnswerCause.ZOOM_MOVED,
                      "invented: the ring was touched while dusting",
                      mishaps.nudgedAt())
                  : unexplained();
          case "calibration-conflict" -> {
            withdrawWrongCalibration(rig);
            yield new NewAnswer(
                AnswerCause.RECALIBRATED,
                "invented: the sheet stood at 49 m; that calibration is taken back",
                null);
          }
          default -> unexplained();
        };
    watch.answer(rig, alert.id(), answer, clock.instant());
  }

  private static NewAnswer unexplained() {
    return new NewAnswer(AnswerCause.UNEXPLAINED, "invented: looked, found nothing", null);
  }

  private static boolean holds(Alert alert, Instant truth) {
    return !truth.isBefore(alert.onsetFrom()) && !truth.isAfter(alert.onsetTo());
  }

  private void withdrawWrongCalibration(Rig rig) {
    List<RecordedCalibration> held = rigs.history(rig).calibrations();
    double usual =
        held.stream()
            .mapToDouble(each -> each.plateScale().arcsecPerUnit())
            .sorted()
            .skip(held.size() / 2)
            .findFirst()
            .orElse(0);
    held.stream()
        .filter(each -> Math.abs(each.plateScale().arcsecPerUnit() / usual - 1) > 0.01)
        .forEach(
            each -> rigs.withdrawCalibration(rig, each.id(), "invented: the sheet stood at 49 m"));
  }

  private void awaitJudgement(Rig rig) {
    Instant deadline = clock.instant().plus(PATIENCE);
    while (watch.judgementInBrief(rig).pending()) {
      if (clock.instant().isAfter(deadline)) {
        throw new IllegalStateException(rig.slug() + " was not judged within " + PATIENCE);
      }
      try {
        Thread.sleep(PAUSE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IllegalStateException("interrupted", e);
      }
    }
  }
}
