package org.limbspan.reading;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Upload;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** Takes an upload of readings: all of it is checked before any of it is stored. */
@Component
class ReadingIntake {

  private final Readings readings;
  private final Sky sky;
  private final Clock clock;

  ReadingIntake(Readings readings, Sky sky, Clock clock) {
    this.readings = readings;
    this.sky = sky;
    this.clock = clock;
  }

  IntakeReport take(Rig rig, Upload upload, BadLines badLines, OnConflict onConflict) {
    ReadingEntry reader = new ReadingEntry(sky, clock.instant(), onConflict);
    List<NewReading> good = new ArrayList<>();
    Rejections rejections = new Rejections();
    upload.forEach(entry -> sort(entry, reader, good, rejections));
    int received = good.size() + rejections.lines();
    if (badLines == BadLines.REFUSE_BATCH) {
      rejections.requireNone(received);
    }
    IntakeReport report = readings.record(rig, good, badLines);
    rejections.addAll(report);
    return new IntakeReport(
        received, report.stored(), report.alreadyHeld(), rejections.lines(), rejections.named());
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
