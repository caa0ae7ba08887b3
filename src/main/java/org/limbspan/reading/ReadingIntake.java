package org.limbspan.reading;

import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Upload;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** Takes an upload of readings: all of it is checked before any of it is stored. */
@Component
class ReadingIntake {

  private final Readings readings;
  private final ReadingMeters meters;
  private final IntakeTraffic traffic;
  private final Sky sky;
  private final Clock clock;

  ReadingIntake(
      Readings readings, ReadingMeters meters, IntakeTraffic traffic, Sky sky, Clock clock) {
    this.readings = readings;
    this.meters = meters;
    this.traffic = traffic;
    this.sky = sky;
    this.clock = clock;
  }

  IntakeReport take(Rig rig, Upload upload, BadLines badLines, OnConflict onConflict) {
    return traffic.during(upload.isLong(), () -> takeAll(rig, upload, badLines, onConflict));
  }

  private IntakeReport takeAll(Rig rig, Upload upload, BadLines badLines, OnConflict onConflict) {
    ReadingEntry reader = new ReadingEntry(sky, clock.instant(), onConflict);
    List<NewReading> good = new ArrayList<>();
    Rejections rejections = new Rejections();
    upload.forEach(entry -> sort(entry, reader, good, rejections));
    int received = good.size() + rejections.lines();
    if (badLines == BadLines.REFUSE_BATCH) {
      meters.refused(rejections.lines());
      rejections.requireNone(received);
    }
    IntakeReport report = record(rig, good, badLines);
    rejections.addAll(report);
    meters.refused(rejections.lines());
    return new IntakeReport(
        received, report.stored(), report.alreadyHeld(), rejections.lines(), rejections.named());
  }

  /** What is refused whole for some of its entries names them, up to a number. */
  private IntakeReport record(Rig rig, List<NewReading> good, BadLines badLines) {
    try {
      return readings.record(rig, good, badLines);
    } catch (InvalidInput | Conflict refused) {
      Set<Integer> lines = new HashSet<>();
      refused.violations().forEach(violation -> lines.add(violation.line()));
      meters.refused(Math.max(1, lines.size()));
      throw refused;
    }
  }

  private static void sort(
      Entry entry, ReadingEntry reader, List<NewReading> good, Rejections rejections) {
    Optional<NewReading> reading = reader.read(entry);
    if (reading.isPresent()) {
      good.add(reading.get());
    } else {
      rejections.addLine(entry.violations());
    }
  }
}
