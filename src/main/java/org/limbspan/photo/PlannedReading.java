package org.limbspan.photo;

import java.time.Instant;
import java.util.List;
import org.limbspan.photo.bracket.CombinedFrames;
import org.limbspan.photo.bracket.Frame;
import org.limbspan.photo.bracket.SetAside;
import org.limbspan.sky.Axis;

/** A reading that the photographs held ask for. */
record PlannedReading(Axis axis, CombinedFrames combined) {

  static PlannedReading of(List<Frame> bracket) {
    return new PlannedReading(bracket.get(0).axis(), CombinedFrames.of(bracket));
  }

  Instant takenAt() {
    return combined.takenAt();
  }

  List<Long> photoIds() {
    return combined.used().stream().map(Frame::photoId).toList();
  }

  List<Long> setAsideIds() {
    return combined.setAside().stream().map(SetAside::frame).map(Frame::photoId).toList();
  }
}
